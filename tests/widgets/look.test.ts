/**
 * The look's colours, read from the stylesheet that ships, against the contrast the outside asks for.
 * Source: WCAG 2.2, relative luminance and contrast ratio as defined there; SC 1.4.3 (text 4.5 to 1),
 * SC 1.4.11 (lines of controls, graphics 3 to 1). Worked figure: black on white is 21 to 1.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const sheet = readFileSync(new URL('../../src/widgets/styles/tokens.css', import.meta.url), 'utf8');
const light = tokensAfter(':root {');
const darkByDevice = tokensAfter(':root:not([data-scheme="light"]) {');
const darkByChoice = tokensAfter(':root[data-scheme="dark"] {');
const text = ['ink', 'ink-2', 'ours', 'theirs', 'between', 'at-risk', 'holds', 'tight', 'fails'];
const schemes = [
  ['light', light],
  ['dark', darkByDevice],
] as const;

describe.each(schemes)('%s scheme', (_, tokens) => {
  test.each(text)('%s can be read on paper and on tags', (name) => {
    for (const ground of ['paper', 'tag']) {
      expect(contrast(tokens.get(name), tokens.get(ground))).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('the line around controls can be seen', () => {
    expect(contrast(tokens.get('line'), tokens.get('paper'))).toBeGreaterThanOrEqual(3);
    expect(contrast(tokens.get('line'), tokens.get('tag'))).toBeGreaterThanOrEqual(3);
  });
});

test('both ways into the dark give the same colours', () => {
  expect(darkByChoice).toEqual(darkByDevice);
  expect([...darkByDevice.keys()].filter((name) => !light.has(name))).toEqual([]);
  expect(darkByDevice.size).toBeGreaterThanOrEqual(text.length + 3);
});

test('the ratio is the published one', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2); // the usual near miss, WCAG technique G18
});

function tokensAfter(opening: string): Map<string, string> {
  const from = sheet.indexOf(opening);
  expect(from, opening).toBeGreaterThanOrEqual(0);
  const block = sheet.slice(from, sheet.indexOf('}', from));
  return new Map(
    [...block.matchAll(/--ff-([\w-]+): (#[0-9a-f]{6});/g)].map((hit) => [hit[1] ?? '', hit[2] ?? '']),
  );
}

function contrast(one: string | undefined, other: string | undefined): number {
  const [dark = 0, bright = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (bright + 0.05) / (dark + 0.05);
}

function luminance(colour: string | undefined): number {
  if (colour === undefined) throw new Error('no such token');
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
