/**
 * Words that must not appear, each with what to write instead. In src/domain they would make a result depend
 * on the machine or the moment; in the rest of src they would break the content security policy or ask
 * another server; anywhere they would be a promise left open. Comments may explain a ban, so code is searched
 * without its comments where the ban is about code.
 */
import { describe, expect, test } from 'vitest';
import { DECIMAL_LEFT_OUT } from '../../vite.config.ts';
import { filesUnder, isCode, readText, withoutComments } from '../support/source-files.ts';

interface Ban {
  readonly word: RegExp;
  readonly instead: string;
}

const inTheDomain: Ban[] = [
  { word: /\bMath\.random\b/, instead: 'take a draw as an argument' },
  {
    word: /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bperformance\.now\b/,
    instead: 'take the moment as an argument',
  },
  { word: /\bcrypto\./, instead: 'take the identity or the seed as an argument' },
  { word: /\bset(?:Timeout|Interval)\b|\bqueueMicrotask\b/, instead: 'return the result' },
  { word: /\b(?:local|session)Storage\b|\bindexedDB\b/, instead: 'leave saving to src/storage' },
  { word: /\btoLocale\w*String\b|\bIntl\b/, instead: 'leave showing to src/screens' },
  { word: /\bconsole\b/, instead: 'return a Problem' },
  { word: /^\s*(?:export\s+)?(?:abstract\s+)?class\s/m, instead: 'use plain data and functions' },
];

const inAllOfSrc: Ban[] = [
  { word: /\beval\(|\bnew Function\b/, instead: 'the policy blocks evaluated code' },
  {
    word: /\b(?:inner|outer)HTML\b|\binsertAdjacentHTML\b|\bdocument\.write\b|\bdangerouslySetInnerHTML\b/,
    instead: 'render elements, never HTML text',
  },
  { word: /\sstyle="/, instead: 'use a class, or a style object' },
  {
    word: /\bfetch\(|\bXMLHttpRequest\b|\bWebSocket\b|\bEventSource\b|\bsendBeacon\b/,
    instead: 'nothing leaves the device; import what the app ships with',
  },
];

const anywhere: Ban[] = [
  {
    word: /\b(?:TODO|FIXME|XXX)\b|\bnot implemented\b|\bcoming soon\b|\blorem ipsum\b/i,
    instead: 'finish it',
  },
  { word: /\btranscript\b|\bseed document\b/i, instead: 'say the reason itself' },
  { word: /\/(?:work|home|Users)\/\w/, instead: 'use a path inside the repository' },
  { word: /@ts-ignore|@ts-nocheck/, instead: 'give it its type' },
];

const here = 'tests/tidy/words.test.ts';
const text = /\.(?:tsx?|css|md|html|json|webmanifest|svg)$/;

describe('words that must not appear', () => {
  test('in the domain, in code', () => {
    expect(faultsIn(filesUnder('src/domain').filter(isCode), inTheDomain, codeOf)).toEqual([]);
  });

  test('in src, in code', () => {
    expect(faultsIn(filesUnder('src').filter(isCode), inAllOfSrc, codeOf)).toEqual([]);
  });

  test('anywhere, in comments and documents too', () => {
    const files = filesUnder('').filter((path) => text.test(path));
    const others = files.filter((path) => path !== here && path !== 'package-lock.json');
    expect(faultsIn(others, anywhere, readText)).toEqual([]);
  });

  test('in index.html: nothing inline and nothing from elsewhere', () => {
    const page = readText('index.html');
    expect(page).not.toMatch(/\sstyle\s*=|<style\b/i);
    expect(page).not.toMatch(/\son\w+\s*=/i);
    expect(page).not.toMatch(/<script(?![^>]*\ssrc=)[^>]*>/i);
    expect(page).not.toMatch(/(?:src|href)\s*=\s*["']?(?:https?:)?\/\//i);
  });

  test('in src, no method of decimal.js that the build leaves out', () => {
    // Math has some of the same names; those are not the library's.
    const names = [...new Set(DECIMAL_LEFT_OUT.flat())].join('|');
    const word = new RegExp(`(?<!\\bMath)\\.(?:${names})\\(`);
    expect(word.test('amount.toFraction()')).toBe(true);
    expect(word.test('Math.log(2)')).toBe(false);
    const bans = [
      { word, instead: 'call what the build keeps, or keep it: DECIMAL_LEFT_OUT in vite.config.ts' },
    ];
    expect(faultsIn(filesUnder('src').filter(isCode), bans, codeOf)).toEqual([]);
  });

  test('the search itself finds a word in code and not in a comment', () => {
    const sample =
      '// Math.random is banned\nconst a = 1; /* Date.now */\nconst b = Math.random();\nnew Date(0);';
    const found = faultsIn(['sample.ts'], inTheDomain, (path) => withoutComments(path, sample));
    expect(found).toEqual(['sample.ts:3 has "Math.random": take a draw as an argument']);
  });
});

function codeOf(path: string): string {
  return withoutComments(path, readText(path));
}

function faultsIn(files: string[], bans: Ban[], read: (path: string) => string): string[] {
  return files.flatMap((path) => {
    const content = read(path);
    return bans.flatMap(({ word, instead }) => {
      const found = word.exec(content);
      if (!found) return [];
      const line = content.slice(0, found.index).split('\n').length;
      return [`${path}:${line} has "${found[0].trim()}": ${instead}`];
    });
  });
}
