/**
 * reckon as an analyst runs it: a process of its own, with its arguments, its standard input and what it writes.
 * Worked example: ran(['--help']) ends with code 0 and the help on standard output.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { root } from './source-files.ts';

export interface Ran {
  code: number | null;
  out: string;
  err: string;
}

/** A process is started anew for each answer, beside other tests: well above what one takes. */
export const RECKON_TIMEOUT = 120_000;

export function started(args: readonly string[]): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', 'src/reckon.ts', ...args], { cwd: root });
}

export async function ran(args: readonly string[], input: string | Buffer = ''): Promise<Ran> {
  const child = started(args);
  const err = textOf(child.stderr);
  const out = textOf(child.stdout);
  child.stdin?.on('error', () => {});
  child.stdin?.end(input);
  const code = await codeOf(child);
  return { code, out: await out, err: await err };
}

export function codeOf(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => child.once('close', resolve));
}

export async function textOf(stream: NodeJS.ReadableStream | null): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream ?? []) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

/** The non-empty lines of a text. */
export function linesOf(text: string): string[] {
  return text.split('\n').filter((line) => line !== '');
}
