// Numbers in the reader's own digits and separators, as everywhere in the app: a true minus before all, halves away from
// zero, shares to a tenth without a needless zero. Worked figure: price(3.42) is "3.42", share(0.42) "42 %", tenth(26) "26.0".

export interface Writer {
  /** With the currency's own decimals. */
  price: (amount: number) => string;
  priceSigned: (amount: number) => string;
  /** With the currency's sign where the locale puts it. */
  priceWithSign: (amount: number) => string;
  share: (rate: number) => string;
  tenth: (value: number) => string;
  /** At most two decimals. */
  number: (value: number) => string;
}

/** For a locale like "de-DE" and a currency of ISO 4217. */
export function writerFor(locale: string, currency: string, minorDigits: number): Writer {
  const digits = (least: number, most: number) => {
    const format = new Intl.NumberFormat(locale, {
      minimumFractionDigits: least,
      maximumFractionDigits: most,
    });
    return (value: number) => format.format(exactly(Math.abs(value)));
  };
  const [money, tenths, hundredths] = [digits(minorDigits, minorDigits), digits(1, 1), digits(0, 2)];
  const points = digits(0, 1);
  const percent = around(locale, { style: 'percent' }, 0.5);
  const after = percent.after.endsWith('%') ? '\u00a0%' : percent.after;
  const before = percent.after.endsWith('%') ? '' : percent.before;
  const sign = around(locale, { style: 'currency', currency, currencyDisplay: 'narrowSymbol' }, 1);
  const written = (value: number, write: (value: number) => string, ends = { before: '', after: '' }) => {
    const text = write(value);
    const negative = value < 0 && text !== write(0);
    return `${negative ? '−' : ''}${ends.before}${text}${ends.after}`;
  };
  return {
    price: (amount) => written(amount, money),
    priceSigned: (amount) =>
      `${amount > 0 && money(amount) !== money(0) ? '+' : ''}${written(amount, money)}`,
    priceWithSign: (amount) => written(amount, money, sign),
    share: (rate) => written(rate * 100, points, { before, after }),
    tenth: (value) => written(value, tenths),
    number: (value) => written(value, hundredths),
  };
}

/** Six decimals, as a decimal text: 1.005 is then just that, and its half goes up. */
function exactly(value: number): Intl.StringNumericLiteral {
  return value.toFixed(6) as `${number}`;
}

function around(locale: string, shape: Intl.NumberFormatOptions, sample: number) {
  const parts = new Intl.NumberFormat(locale, shape).formatToParts(sample);
  const numeric = parts.map(({ type }) => NUMERIC.has(type));
  const text = (some: typeof parts) => some.map(({ value }) => value).join('');
  return {
    before: text(parts.slice(0, numeric.indexOf(true))),
    after: text(parts.slice(numeric.lastIndexOf(true) + 1)),
  };
}

const NUMERIC = new Set(['integer', 'group', 'decimal', 'fraction']);
