// What people type into a number field, as the canonical decimal text a plan keeps, or a sentence part that says what was
// expected. Separators are read by the reader's own look; where a text could be read two ways the other reading is handed
// back too, so that the screen can show what it understood.
// Worked figure: "1,200" is 1200 where the comma groups, and 1.200 where it stands before decimals; "1,20" is 1.20 in both.
import { dec } from './decimal.ts';
import type { NumberLook } from './look.ts';
import { plainText, withoutCurrency } from './typed-text.ts';

/** amount: money; percent: a share, typed in points; whole: a count; rateOfSale: units per store and week; factor: a plain number. */
export type TypedKind = 'amount' | 'percent' | 'whole' | 'rateOfSale' | 'factor';

export type Typed =
  | {
      ok: true;
      /** Canonical: "3.40", "1200", "0.33" for 33 %, "-5". Whether it is in range is the plan's to say. */
      text: string;
      /** The other number the same text could mean, canonical; null when it can mean only one. */
      couldBe: string | null;
    }
  | { ok: false; got: string; expected: string };

/** Read a typed text. Refused: no digits, letters but k and m, groups that aren't groups, a sign of another currency. */
export function parseTyped(look: NumberLook, kind: TypedKind, typed: string): Typed {
  const refused = refusal(look, kind, typed);
  let body = plainText(typed);
  if (kind === 'amount') {
    const bare = withoutCurrency(body, look);
    if (bare === null) return { ...refused, expected: `an amount in ${look.currency}` };
    body = bare;
  }
  const sign = /^([-+]?) ?(.*)$/.exec(body);
  const negative = sign?.[1] === '-';
  body = sign?.[2] ?? '';
  if (kind === 'amount' && negative) body = withoutCurrency(body, look) ?? body;
  if (kind === 'percent') body = body.replace(/ ?%$/, '').replace(/^% ?/, '');

  if (kind === 'factor') body = body.replace(/ ?(x|×|times)$/i, '');

  const scale = kind === 'percent' ? null : /^(.*\d[.,]?) ?([km])$/i.exec(body);
  const readings = readingsOf(scale?.[1] ?? body, look);
  const power = scale ? (scale[2]?.toLowerCase() === 'k' ? 3 : 6) : kind === 'percent' ? -2 : 0;
  const texts = readings.map((reading) => canonical({ reading, power, negative }));
  const [text, other] = kind === 'whole' ? texts.map(withoutZeroDecimals).filter(isWhole) : texts;
  if (text === undefined) return refused;
  if (!KEPT.test(text))
    return { ...refused, expected: `${refused.expected}, with at most 15 digits and 10 decimals` };
  return { ok: true, text, couldBe: other === undefined || other === text ? null : other };
}

/** All the digits a plan keeps of a number. */
const KEPT = /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?$/;

const GROUPED = /^\d{1,3}(?:([ '.,])\d{3})(?:\1\d{3})*$|^\d{1,2}(?:,\d{2})+,\d{3}$/;

/** Every number a bare text can mean, the likelier first; none when it isn't a number. */
function readingsOf(body: string, look: NumberLook): string[] {
  if (!/^(?=.*\d)[\d.,' ]+$/.test(body) || body.length > 40) return [];
  const mark = /[.,](?=[^.,]*$)/.exec(body);
  const asDecimal = mark ? splitAt(body, mark.index) : null;
  const asGroups = GROUPED.test(body) ? body.replace(/\D/g, '') : null;
  if (!mark) return /^\d+$/.test(body) ? [body] : asGroups === null ? [] : [asGroups];
  if (asDecimal === null) return asGroups === null ? [] : [asGroups];
  if (asGroups === null || body.startsWith('0')) return [asDecimal];
  return body[mark.index] === look.group ? [asGroups, asDecimal] : [asDecimal, asGroups];
}

/** The text with its last point or comma before the decimals; null when what stands before it isn't a whole number. */
function splitAt(body: string, index: number): string | null {
  const units = body.slice(0, index);
  const decimals = body.slice(index + 1);
  if (!/^\d*$/.test(decimals)) return null;
  if (/^\d*$/.test(units)) return `${units || '0'}.${decimals}`;
  const ownGroups = GROUPED.test(units) && !units.includes(body[index] ?? '');
  return ownGroups ? `${units.replace(/\D/g, '')}.${decimals}` : null;
}

/** Times a power of ten, without leading zeros or an empty end; decimals stay as typed unless the point moved. */
function canonical(args: { reading: string; power: number; negative: boolean }): string {
  const { reading, power, negative } = args;
  const [units = '', decimals = ''] = reading.split('.');
  const plain = `${units.replace(/^0+(?=\d)/, '')}${decimals === '' ? '' : `.${decimals}`}`;
  const text = power === 0 ? plain : dec(plain).times(dec(10).pow(power)).toFixed();
  return negative && /[1-9]/.test(text) ? `-${text}` : text;
}

function withoutZeroDecimals(text: string): string {
  return text.replace(/\.0+$/, '');
}

function isWhole(text: string): boolean {
  return !text.includes('.');
}

function refusal(look: NumberLook, kind: TypedKind, typed: string): Extract<Typed, { ok: false }> {
  const trimmed = typed.trim();
  const got = trimmed === '' ? 'nothing' : trimmed.slice(0, 80);
  const point = look.decimal;
  const expected = {
    amount: `an amount, like 3${point}40, 36000 or 36k`,
    percent: `a percentage, like 33 or 33${point}5 %`,
    whole: 'a whole number, like 60 or 1200',
    rateOfSale: `units per store per week, like 6 or 4${point}5`,
    factor: `a number, like 1${point}25`,
  }[kind];
  return { ok: false, got, expected };
}
