// What tabs of the app tell each other: a plan was saved or deleted, and which format version the teller writes. An
// older tab that hears of a newer format stops writing; see the app's tabs.ts for what is done with the news.
// Worked example: a tab that saved revision 8 of "spring" posts { kind: 'saved', id: 'spring', revision: 8, format: 1 }.
import { FORMAT_VERSION } from '../plan-format/index.ts';

export type News =
  | { kind: 'opened'; format: number }
  | { kind: 'saved'; format: number; id: string; revision: number }
  | { kind: 'deleted'; format: number; id: string };

/** News without the format: that is added when it is told. */
export type Telling =
  | { kind: 'opened' }
  | { kind: 'saved'; id: string; revision: number }
  | { kind: 'deleted'; id: string };

export interface Tabs {
  tell: (telling: Telling) => void;
  /** Called for the news of other tabs only. */
  listen: (hear: (news: News) => void) => void;
  close: () => void;
}

/** A channel between the tabs of this device, or a silent one where the browser has none. */
export function openTabs(): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, listen: () => {}, close: () => {} };
  const channel = new BroadcastChannel('firstfill');
  return {
    tell: (telling) => channel.postMessage({ ...telling, format: FORMAT_VERSION }),
    listen: (hear) => {
      channel.onmessage = ({ data }: MessageEvent<unknown>) => {
        const news = newsOf(data);
        if (news) hear(news);
      };
    },
    close: () => channel.close(),
  };
}

/** Another version of the app may speak: only its format is sure to be understood. */
function newsOf(data: unknown): News | null {
  if (typeof data !== 'object' || data === null) return null;
  const { kind, format, id, revision } = data as Record<string, unknown>;
  if (typeof format !== 'number') return null;
  if (kind === 'saved' && typeof id === 'string' && typeof revision === 'number')
    return { kind, format, id, revision };
  if (kind === 'deleted' && typeof id === 'string') return { kind, format, id };
  return { kind: 'opened', format };
}
