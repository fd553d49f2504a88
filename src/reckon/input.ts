// The text of the plan file, from a path or from standard input, or why there is none, in a sentence. Bytes are read as
// they come, so that a slow pipe is waited for, and an endless one is left.
// Worked example: a folder is "reckon: "plans" can't be read: it is a folder; expected ...".
import { createReadStream } from 'node:fs';
import { stdin } from 'node:process';
import { FILE_CHARACTERS_MOST } from '../plan-format/index.ts';

export type Input =
  | { ok: true; text: string }
  /** `isUsage`: nothing could be read at all; else something was, and it is no plan. */
  | { ok: false; isUsage: boolean; sentence: string };

/** A character of UTF-8 has at most four bytes. */
const BYTES_MOST = 4 * FILE_CHARACTERS_MOST;

const EXPECTED = 'expected the path of a plan file, or - for standard input';

const WHY: Record<string, string> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
};

/** The whole text of `file`; '-' is standard input. */
export async function readInput(file: string): Promise<Input> {
  const name = file === '-' ? 'standard input' : JSON.stringify(file);
  const chunks: Buffer[] = [];
  let bytes = 0;
  try {
    for await (const chunk of file === '-' ? stdin : createReadStream(file)) {
      chunks.push(chunk as Buffer);
      bytes += (chunk as Buffer).length;
      if (bytes > BYTES_MOST) return noPlan(name, 'is far too long', 'at most 20 million characters');
    }
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    const why = WHY[code ?? ''] ?? message;
    return { ok: false, isUsage: true, sentence: `reckon: ${name} can't be read: ${why}; ${EXPECTED}.` };
  }
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks)) };
  } catch {
    return noPlan(name, 'is not text in UTF-8', 'JSON in UTF-8');
  }
}

function noPlan(name: string, what: string, expected: string): Input {
  return {
    ok: false,
    isUsage: false,
    sentence: `reckon: ${name} ${what}; expected a plan file, ${expected}.`,
  };
}
