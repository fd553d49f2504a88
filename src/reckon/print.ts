// What reckon writes, waited for until it is out: a pipe takes a long answer in parts, and may be closed before its end.
// Worked example: `reckon plan.json --weeks | head -1` prints one line and ends quietly.
import { stderr, stdout } from 'node:process';

/** Null when all of it is out, or when the reader has gone and wants no more; else why it could not be written. */
export function writeOut(text: string): Promise<string | null> {
  return writeTo(stdout, text);
}

/** Sentences, one a line. Where even they can't be written there is nobody to tell. */
export async function complain(sentences: readonly string[]): Promise<void> {
  if (sentences.length > 0) await writeTo(stderr, `${sentences.map(oneLine).join('\n')}\n`);
}

/** Names come from the plan: a line break or a terminal's control sign in one becomes a space. */
export function oneLine(sentence: string): string {
  return sentence.replace(/[\p{Cc}\u2028\u2029]/gu, ' ');
}

function writeTo(stream: NodeJS.WriteStream, text: string): Promise<string | null> {
  return new Promise((resolve) => {
    stream.once('error', (error: NodeJS.ErrnoException) => {
      resolve(error.code === 'EPIPE' ? null : error.message);
    });
    stream.write(text, (error) => {
      // A failure is told by the error event too; here it would come a second time.
      if (!error) resolve(null);
    });
  });
}
