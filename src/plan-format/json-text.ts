// Where a text stops being JSON, and what was expected there; and which fields are written twice. Engines word and
// place such faults differently, or not at all, so the text is walked here once more. The walk keeps its own stack, and
// nests to a depth no plan has: a file of a million brackets is a fault in words, not an overflow.
// Worked example: '{"name": "Tea",}' stops at line 1, column 16: got "}", expected a field name in double quotes.

export interface JsonFault {
  line: number;
  column: number;
  got: string;
  expected: string;
}

export interface JsonWalk {
  fault: JsonFault | null;
  /** Keys from the top down to each field that its object already has. */
  repeated: readonly string[][];
}

type Want = 'value' | 'valueOrClose' | 'key' | 'keyOrClose' | 'colon' | 'commaOrClose' | 'end';

interface Frame {
  isList: boolean;
  /** Names of the fields so far; null for a list. */
  keys: Set<string> | null;
  /** The field, or the index, that is being read. */
  at: string;
}

const EXPECTED: Record<Exclude<Want, 'commaOrClose'>, string> = {
  value: 'a value',
  valueOrClose: 'a value or "]"',
  key: 'a field name in double quotes',
  keyOrClose: 'a field name in double quotes or "}"',
  colon: '":" after the field name',
  end: 'nothing more after the last bracket',
};

/** Brackets inside brackets; a plan has eight. Copying and checking a value call themselves once a level. */
const DEPTH_MOST = 100;

const BLANK = /[ \t\n\r]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids exactly these inside a text
const TEXT = /"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001f]*)*"/y;
const OTHER_VALUE = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;
const WORD = /[^\s,:{}[\]"]{1,20}/y;

/** Walks the whole text; the first fault ends the walk. */
export function walkJson(text: string): JsonWalk {
  const stack: Frame[] = [];
  const repeated: string[][] = [];
  let want: Want = 'value';
  let offset = after(BLANK, text, 0);
  while (offset < text.length) {
    const next = step(text, offset, want, stack, repeated);
    if (next === null) return { fault: faultAt(text, offset, want, stack), repeated };
    want = next.want;
    offset = after(BLANK, text, next.offset);
  }
  return { fault: want === 'end' ? null : faultAt(text, offset, want, stack), repeated };
}

type Next = { want: Want; offset: number } | null;

function step(text: string, offset: number, want: Want, stack: Frame[], repeated: string[][]): Next {
  const char = text[offset];
  if (want === 'colon') return char === ':' ? { want: 'value', offset: offset + 1 } : null;
  if (want === 'key' || want === 'keyOrClose') {
    if (char === '}' && want === 'keyOrClose') return closed(stack, offset);
    return key(text, offset, stack, repeated);
  }
  if (want === 'commaOrClose') return commaOrClose(char, offset, stack);
  if (want === 'end') return null;
  if (char === ']' && want === 'valueOrClose') return closed(stack, offset);
  return value(text, offset, stack);
}

function value(text: string, offset: number, stack: Frame[]): Next {
  const char = text[offset];
  if (char === '{' || char === '[') {
    if (stack.length === DEPTH_MOST) return null;
    const isList = char === '[';
    stack.push({ isList, keys: isList ? null : new Set(), at: isList ? '0' : '' });
    return { want: isList ? 'valueOrClose' : 'keyOrClose', offset: offset + 1 };
  }
  const end = after(char === '"' ? TEXT : OTHER_VALUE, text, offset);
  return end === offset || isEndless(text, offset)
    ? null
    : { want: stack.length === 0 ? 'end' : 'commaOrClose', offset: end };
}

function key(text: string, offset: number, stack: Frame[], repeated: string[][]): Next {
  const frame = stack.at(-1);
  const end = after(TEXT, text, offset);
  if (!frame || end === offset) return null;
  frame.at = String(JSON.parse(text.slice(offset, end)));
  if (frame.keys?.has(frame.at)) repeated.push(stack.map(({ at }) => at));
  frame.keys?.add(frame.at);
  return { want: 'colon', offset: end };
}

function commaOrClose(char: string | undefined, offset: number, stack: Frame[]): Next {
  const frame = stack.at(-1);
  if (!frame) return null;
  if (char === (frame.isList ? ']' : '}')) return closed(stack, offset);
  if (char !== ',') return null;
  if (frame.isList) frame.at = String(Number(frame.at) + 1);
  return { want: frame.isList ? 'value' : 'key', offset: offset + 1 };
}

function closed(stack: Frame[], offset: number): Next {
  stack.pop();
  return { want: stack.length === 0 ? 'end' : 'commaOrClose', offset: offset + 1 };
}

/** The offset behind what `pattern` takes at `offset`; the same offset when it takes nothing. */
function after(pattern: RegExp, text: string, offset: number): number {
  pattern.lastIndex = offset;
  return pattern.test(text) ? pattern.lastIndex : offset;
}

function faultAt(text: string, offset: number, want: Want, stack: readonly Frame[]): JsonFault {
  const before = text.slice(0, offset).split('\n');
  const place = { line: before.length, column: (before.at(-1) ?? '').length + 1 };
  const isValue = want === 'value' || want === 'valueOrClose';
  if (isValue && isBracket(text[offset])) {
    return {
      ...place,
      got: `${DEPTH_MOST + 1} brackets inside each other`,
      expected: `at most ${DEPTH_MOST}`,
    };
  }
  if (isValue && isEndless(text, offset))
    return { ...place, got: gotAt(text, offset), expected: NUMBER_EXPECTED };
  const isText = text[offset] === '"' && (isValue || want.startsWith('key'));
  if (isText) return { ...place, got: 'a text that never ends well', expected: TEXT_EXPECTED };
  const expected = want === 'commaOrClose' ? `"," or "${stack.at(-1)?.isList ? ']' : '}'}"` : EXPECTED[want];
  return { ...place, got: gotAt(text, offset), expected };
}

/** A number past what a double holds, which would be read as infinity. */
function isEndless(text: string, offset: number): boolean {
  if (text[offset] === '"') return false;
  return Math.abs(Number(text.slice(offset, after(OTHER_VALUE, text, offset)))) === Number.POSITIVE_INFINITY;
}

/** Where a value may stand, an opening bracket is a fault by its depth alone. */
function isBracket(char: string | undefined): boolean {
  return char === '{' || char === '[';
}

const NUMBER_EXPECTED = 'a number below 1e308';

const TEXT_EXPECTED = 'a closing double quote, and no line break or lone backslash before it';

function gotAt(text: string, offset: number): string {
  if (offset >= text.length) return 'the end of the file';
  const end = after(WORD, text, offset);
  return JSON.stringify(text.slice(offset, Math.max(end, offset + 1)));
}
