// What stands after `reckon` on the command line, read into options or refused in a sentence (exit code 2).
// Worked example: ["plan.json", "--weeks"] is { file: 'plan.json', weeks: true, ... }; ["--week"] is refused.

import { shortened, shown } from '../domain/plan/shown.ts';

export interface Options {
  /** '-' is standard input. */
  file: string;
  weeks: boolean;
  journal: boolean;
  help: boolean;
}

export type Arguments = { ok: true; options: Options } | { ok: false; sentence: string };

const FLAGS = ['--weeks', '--journal', '--help'] as const;

/** What begins with a hyphen is an option; '-' alone is standard input, and './-x' a file of that name. */
export function readArguments(words: readonly string[]): Arguments {
  const isOption = (word: string) => word.startsWith('-') && word !== '-';
  const flags = words.filter(isOption);
  const files = words.filter((word) => !isOption(word));
  const unknown = flags.find((flag) => !(FLAGS as readonly string[]).includes(flag));
  if (unknown) return refuse(`${shown(unknown)} is not an option; there are ${FLAGS.join(', ')}`);
  const repeated = flags.find((flag, place) => flags.indexOf(flag) !== place);
  if (repeated) return refuse(`${repeated} is given twice`);
  const help = flags.includes('--help');
  const [file] = files;
  if (!help && (file === undefined || file === '')) {
    return refuse('a plan file is expected, or - for standard input');
  }
  if (files.length > 1) {
    return refuse(
      `one plan file is expected, ${files.length} came: ${shortened(files.map(shown).join(', '))}`,
    );
  }
  const options = {
    file: file ?? '',
    weeks: flags.includes('--weeks'),
    journal: flags.includes('--journal'),
    help,
  };
  return { ok: true, options };
}

function refuse(why: string): Arguments {
  return {
    ok: false,
    sentence: `reckon: ${why}. Usage: reckon FILE [--weeks] [--journal], or reckon --help.`,
  };
}
