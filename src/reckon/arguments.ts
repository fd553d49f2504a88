// What stands after `reckon` on the command line, read into options or refused in a sentence (exit code 2).
// Worked example: ["plan.json", "--weeks"] is { file: 'plan.json', weeks: true, ... }; ["--week"] is refused.

export interface Options {
  /** '-' is standard input. */
  file: string;
  weeks: boolean;
  journal: boolean;
  help: boolean;
}

export type Arguments = { ok: true; options: Options } | { ok: false; sentence: string };

const FLAGS = ['--weeks', '--journal', '--help'] as const;

export function readArguments(words: readonly string[]): Arguments {
  const flags = words.filter((word) => word.startsWith('--'));
  const files = words.filter((word) => !word.startsWith('--'));
  const unknown = flags.find((flag) => !(FLAGS as readonly string[]).includes(flag));
  if (unknown) return refuse(`${unknown} is not an option; there are ${FLAGS.join(', ')}`);
  const repeated = flags.find((flag, place) => flags.indexOf(flag) !== place);
  if (repeated) return refuse(`${repeated} is given twice`);
  const help = flags.includes('--help');
  const [file] = files;
  if (!help && file === undefined) return refuse('a plan file is expected, or - for standard input');
  if (files.length > 1) return refuse(`one plan file is expected, ${files.length} came: ${files.join(', ')}`);
  const options = { file: file ?? '', weeks: flags.includes('--weeks'), journal: flags.includes('--journal'), help };
  return { ok: true, options };
}

function refuse(why: string): Arguments {
  return { ok: false, sentence: `reckon: ${why}. Usage: reckon FILE [--weeks] [--journal], or reckon --help.` };
}
