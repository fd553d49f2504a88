// How an iCalendar file is written down (RFC 5545): text escaped, lines of at most 75 octets folded, every line ended by
// CRLF. Worked figure: "Labels; proof" is written "Labels\; proof"; a line of 80 letters goes on after a blank.

/** A content line, folded; `value` is written as it is: escape text first. */
export function contentLine(name: string, value: string): string {
  return folded(`${name}:${value}`);
}

/** Text as RFC 5545, 3.3.11 has it: backslash, semicolon, comma and line break escaped; other controls left out. */
export function escaped(text: string): string {
  return (
    text
      .replace(/\\/g, '\\\\')
      .replace(/;/g, '\\;')
      .replace(/,/g, '\\,')
      .replace(/\r\n|\r|\n/g, '\\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they may not stand in a calendar
      .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
  );
}

/** 3.1: no line longer than 75 octets without its break; a character is never cut in two. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const more = octetsOf(character);
    if (octets + more > 75) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += more;
  }
  return `${[...parts, part].join('\r\n')}\r\n`;
}

function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
