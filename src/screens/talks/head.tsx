// The head of the meeting, 44 px: the chain with its doors leads back to its deal; more, undo, and Turn around at the top
// right, off the resting thumb. Worked example: "‹ Fernmarket / 180 doors".
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { codeFrom, turnAround } from '../../app/their-side.ts';
import { withTerms } from '../../domain/talks/index.ts';
import { theirRecord } from '../../domain/talks/their-record.ts';
import { isText, useKept } from '../shared/kept.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { MeetingKept } from './kept.ts';
import type { TalksModel } from './model.ts';

export interface HeadProps {
  model: TalksModel;
  kept: MeetingKept;
  onTrouble: (sentence: string) => void;
}

export function TalksHead({ model, kept, onTrouble }: HeadProps): VNode {
  const session = useSession();
  const say = useSay();
  const { plan, account } = model;
  const doors = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  const turn = useTurn(model, kept, onTrouble);
  return (
    <header class="ff-talks-head">
      <a
        class="ff-talks-chain"
        href={hashOf({ view: 'deal', planId: plan.id, accountId: account.id, sheet: null })}
      >
        <span class="ff-talks-chain-name" title={account.name}>
          <span aria-hidden="true">‹ </span>
          {account.name}
        </span>
        <span class="ff-least ff-quiet">
          {say.count(doors)} {doors === 1 ? 'door' : 'doors'}
        </span>
      </a>
      <button
        type="button"
        class="ff-head-button"
        aria-label="More"
        onClick={() => session.openSheet('more')}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M3 5h14M3 10h14M3 15h14" />
        </svg>
      </button>
      <button
        type="button"
        class="ff-head-button"
        aria-label="Undo"
        disabled={!session.canUndo.value}
        onClick={() => session.undo()}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M7 3L3 7l4 4M3 7h8.5a5 5 0 0 1 0 10H7" />
        </svg>
      </button>
      <button type="button" class="ff-talks-turn ff-label" disabled={turn.busy} onClick={turn.run}>
        Turn around
      </button>
    </header>
  );
}

/** Goes to their side with the last offer of ours, or the agreed one; says why where it can't. */
function useTurn({ plan, account }: TalksModel, kept: MeetingKept, onTrouble: (sentence: string) => void) {
  const session = useSession();
  const [busy, setBusy] = useState(false);
  const itemId = useShownItem(account)[0];
  const run = async (): Promise<void> => {
    onTrouble('');
    const record = theirRecord({ plan, accountId: account.id, itemId, withTerms });
    if (!record.ok) {
      onTrouble(record.problems.map((problem) => problemSentence(plan, problem)).join(' '));
      return;
    }
    const code = codeFrom(kept.habits.code);
    setBusy(true);
    const turned = await turnAround({ session, record: record.value, code: code.ok ? code.value : null });
    setBusy(false);
    if (!turned.ok && 'refusal' in turned) onTrouble(turned.refusal.sentence);
  };
  return { busy, run: () => void run() };
}

/** The product their side shows: the one chosen, else the first that is listed. */
export function useShownItem(account: TalksModel['account']): [string, (itemId: string) => void] {
  const [chosen, choose] = useKept(`their-item-${account.id}`, isText);
  const ids = account.listings.map(({ itemId }) => itemId);
  return [ids.find((id) => id === chosen) ?? ids[0] ?? '', choose];
}
