// Plans as files: handed to the person as a download, taken in from a chosen file. The only part of this room that
// touches the page, and only for the moment of a download.
// Worked example: the plan "Spring tea" is downloaded as Spring-tea.firstfill.json.
import {
  FILE_CHARACTERS_MOST,
  type Plan,
  type PlanFile,
  type Reading,
  refused,
} from '../plan-format/index.ts';

/** What importing needs of a browser's File. */
export interface ChosenFile {
  name: string;
  /** Bytes. */
  size: number;
  text: () => Promise<string>;
}

/** The plan in a chosen file. A file far too large is not even read. */
export async function readPlanFile(file: ChosenFile): Promise<Reading<Plan>> {
  // Four bytes a character is the most that UTF-8 needs.
  if (file.size > FILE_CHARACTERS_MOST * 4) {
    return refused(
      'file-unreadable',
      `"${file.name}" has ${megabytes(file.size)} MB, far more than any plan file.`,
      null,
    );
  }
  const reader = await textReader();
  if (reader === null) {
    const sentence = `"${file.name}" could not be read: a part of the app is missing here. Reload, and choose it again.`;
    return refused('file-unreadable', sentence, null);
  }
  try {
    return reader.parsePlanText(await file.text());
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return refused(
      'file-unreadable',
      `"${file.name}" could not be read (${error.name}). Choose it again.`,
      null,
    );
  }
}

/** What reads a text, fetched when it is first needed; null where it can't be had. */
function textReader(): Promise<typeof import('../plan-format/text.ts') | null> {
  return import('../plan-format/text.ts').catch(() => null);
}

/** Hands a file (a plan, or a table or calendar by its name's ending) to the person through the browser's download. */
export function downloadFile({ name, text }: PlanFile): void {
  const address = URL.createObjectURL(new Blob([text], { type: typeOf(name) }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser takes its own hold of the data with the click, but some do so a moment late.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

function typeOf(name: string): string {
  if (name.endsWith('.csv')) return 'text/csv';
  return name.endsWith('.ics') ? 'text/calendar' : 'application/json';
}

/** Hands a calendar file to another app of the device; null where the browser can't. Giving up halfway is no trouble. */
export function fileSharing(): ((file: PlanFile) => Promise<void>) | null {
  const fileOf = ({ name, text }: PlanFile): File => new File([text], name, { type: typeOf(name) });
  const can = navigator.canShare?.({ files: [fileOf({ name: 'dates.ics', text: '' })] }) ?? false;
  if (!can) return null;
  return (file) => navigator.share({ files: [fileOf(file)], title: file.name }).catch(() => undefined);
}

function megabytes(bytes: number): string {
  return String(Math.round(bytes / 1_000_000));
}
