// The first step of reading a typed number: every way of writing the same sign becomes one plain sign, and the currency
// is taken off. Worked example: "−１２ ３４５，５０ €" becomes "-12 345,50" in a plan kept in euros.
import { minorDigitsOf } from './currency.ts';
import type { NumberLook } from './look.ts';

/** First code points of decimal digits: Arabic-Indic, Persian, Devanagari, Bengali, Thai. Full-width ones fold with their block. */
const ZEROES = [0x0660, 0x06f0, 0x0966, 0x09e6, 0x0e50];

/** Digits as 0-9, any space as one space, any minus as "-", any apostrophe as "'"; nothing else changes. */
export function plainText(typed: string): string {
  return [...typed].map(plainSign).join('').replace(/\s+/g, ' ').trim();
}

function plainSign(sign: string): string {
  const code = sign.codePointAt(0) ?? 0;
  if (code >= 0xff01 && code <= 0xff5e) return plainSign(String.fromCodePoint(code - 0xfee0));
  const zero = ZEROES.find((first) => code >= first && code <= first + 9);
  if (zero !== undefined) return String(code - zero);
  if (/[−‒–—﹣]/.test(sign)) return '-';
  if (/[’‘ʼ´`]/.test(sign)) return "'";
  if (sign === '٫') return ',';
  if (sign === '٬') return "'";
  if (sign === '٪') return '%';
  return sign;
}

/** Signs that stand for one currency only; a dollar, pound or yen sign stands for several and is taken as the plan's. */
const ONE_CURRENCY: Record<string, string> = {
  '€': 'EUR',
  '₹': 'INR',
  '₪': 'ILS',
  '₫': 'VND',
  '₴': 'UAH',
  '₺': 'TRY',
};

/** The text without the currency's sign or code at either end; null when it names another currency. */
export function withoutCurrency(text: string, look: NumberLook): string | null {
  const own = `${look.money.before}${look.money.after}`.trim();
  for (const sign of [own, look.currency].filter((each) => each !== '')) {
    if (folded(text).startsWith(folded(sign))) return text.slice(sign.length).trim();
    if (folded(text).endsWith(folded(sign))) return text.slice(0, -sign.length).trim();
  }
  const found = /^(\p{Sc}|[A-Z]{3})|(\p{Sc}|[A-Z]{3})$/u.exec(text);
  const sign = found?.[0];
  if (!found || sign === undefined) return text;
  if (sign.length === 3 && minorDigitsOf(sign) === null) return text;
  const means = sign.length === 3 ? sign : ONE_CURRENCY[sign];
  if (means !== undefined && means !== look.currency) return null;
  return (found.index === 0 ? text.slice(sign.length) : text.slice(0, found.index)).trim();
}

/** Upper case, where that keeps the count of letters. */
function folded(text: string): string {
  const upper = text.toUpperCase();
  return upper.length === text.length ? upper : text;
}
