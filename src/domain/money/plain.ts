// Amounts and rates inside reasons ("2 % of invoice 2.60"): the same on every machine, a point before the decimals and
// no grouping. What stands on its own on a screen goes through format.ts instead.
// Worked figure: percentText('0.125') is "12.5 %"; priceText(dec('2.6')) is "2.60".
import type { Decimal } from './decimal.ts';

/** A canonical rate text as a percentage: the decimal point moves two places, nothing is rounded. */
export function percentText(rate: string): string {
  const minus = rate.startsWith('-');
  const [whole = '0', decimals = ''] = (minus ? rate.slice(1) : rate).split('.');
  const padded = decimals.padEnd(2, '0');
  const points = `${whole}${padded.slice(0, 2)}`.replace(/^0+(?=\d)/, '');
  const rest = padded.slice(2).replace(/0+$/, '');
  return `${minus ? '−' : ''}${points}${rest === '' ? '' : `.${rest}`} %`;
}

/** An amount with all its decimals, at least two. */
export function priceText(amount: Decimal): string {
  const text = amount.toString();
  const point = text.indexOf('.');
  const shown = point < 0 ? `${text}.00` : point === text.length - 2 ? `${text}0` : text;
  return shown.startsWith('-') ? `−${shown.slice(1)}` : shown;
}
