// Numbers of GS1 for what is sold and shipped: the digit that checks a number, the case's number made from the unit's, the
// pallet's. A number of 8 to 14 digits is a GTIN, one of 18 an SSCC (a pallet, or any load that travels as one).
// Source: GS1 General Specifications, "Check digit calculations". Worked figure: 629104150021 is checked by 3.

const CHECKED_DIGITS_MOST = 17;
const GTIN_LENGTHS = [8, 12, 13, 14];
const SSCC_LENGTH = 18;

/** The digit (0 to 9) that goes behind `digits` (1 to 17 of them). From the right, every second weighs 3. Throws for anything else. */
export function checkDigitOf(digits: string): number {
  if (!/^\d+$/.test(digits) || digits.length > CHECKED_DIGITS_MOST) {
    throw new Error(`"${digits}" is not 1 to ${CHECKED_DIGITS_MOST} digits`);
  }
  let sum = 0;
  for (let place = 0; place < digits.length; place++) {
    const digit = Number(digits[digits.length - 1 - place]);
    sum += place % 2 === 0 ? 3 * digit : digit;
  }
  return (10 - (sum % 10)) % 10;
}

/** Whether a number has a length that GTINs have, and ends in its check digit. */
export function isGtin(number: string): boolean {
  return GTIN_LENGTHS.includes(number.length) && isChecked(number);
}

/** Whether a number has 18 digits and ends in its check digit. */
export function isSscc(number: string): boolean {
  return number.length === SSCC_LENGTH && isChecked(number);
}

function isChecked(number: string): boolean {
  return /^\d+$/.test(number) && checkDigitOf(number.slice(0, -1)) === Number(number.at(-1));
}

/** A GTIN as 14 digits, zeros before it. */
export function asGtin14(gtin: string): string {
  return gtin.padStart(14, '0');
}

/**
 * The GTIN-14 of a case (or inner pack) of one kind of unit: indicator 1 to 8, the unit's number without its check digit,
 * a check digit of its own. Throws where the unit's number is no GTIN of at most 13 digits, or has an indicator itself.
 */
export function caseGtinOf(unit: string, indicator: number): string {
  const whole = asGtin14(unit);
  if (!isGtin(unit) || !whole.startsWith('0')) throw new Error(`"${unit}" is not the GTIN of a unit`);
  if (!Number.isInteger(indicator) || indicator < 1 || indicator > 8) {
    throw new Error(`an indicator is 1 to 8, not ${indicator}`);
  }
  const digits = `${indicator}${whole.slice(1, -1)}`;
  return `${digits}${checkDigitOf(digits)}`;
}

/** The SSCC of a load: extension digit 0 to 9, company prefix (4 to 12 digits), a serial number that fills up to 17, check digit. */
export function ssccOf(from: { extension: number; companyPrefix: string; serial: number }): string {
  const { extension, companyPrefix, serial } = from;
  const room = SSCC_LENGTH - 2 - companyPrefix.length;
  const text = String(serial).padStart(room, '0');
  const fits = Number.isInteger(serial) && serial >= 0 && text.length === room;
  if (!/^\d{4,12}$/.test(companyPrefix) || !/^\d$/.test(String(extension)) || !fits) {
    throw new Error(`no SSCC of extension ${extension}, prefix "${companyPrefix}", serial ${serial}`);
  }
  const digits = `${extension}${companyPrefix}${text}`;
  return `${digits}${checkDigitOf(digits)}`;
}
