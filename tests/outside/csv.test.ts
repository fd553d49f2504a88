/**
 * Tables as text against RFC 4180 (Y. Shafranovich, 2005), section 2: its seven points with their own examples (one made-up word is
 * another: a test of ours takes it for a mark of unfinished work); and what
 * spreadsheets do beside it (common practice, no source).
 */
import { describe, expect, test } from 'vitest';
import { readCsv, writeCsv } from '../../src/domain/bulk/csv.ts';

const cells = (text: string) => readCsv(text).rows.map((row) => row.map((cell) => cell.text));

describe('RFC 4180, section 2', () => {
  test.each([
    [
      '1: each record on a line, CRLF',
      'aaa,bbb,ccc\r\nzzz,yyy,www\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'www'],
      ],
    ],
    [
      '2: the last may end without',
      'aaa,bbb,ccc\r\nzzz,yyy,www',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'www'],
      ],
    ],
    [
      '3: a header is a line like the others',
      'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,www\r\n',
      [
        ['field_name', 'field_name', 'field_name'],
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'www'],
      ],
    ],
    ['4: spaces belong to a field', 'aaa, bbb ,ccc', [['aaa', ' bbb ', 'ccc']]],
    [
      '5: fields may be quoted',
      '"aaa","bbb","ccc"\r\nzzz,yyy,www',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'www'],
      ],
    ],
    [
      '6: line breaks and commas in quotes',
      '"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,www',
      [
        ['aaa', 'b\r\nbb', 'c,cc'],
        ['zzz', 'yyy', 'www'],
      ],
    ],
    ['7: a quote in quotes is written twice', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('point %s', (_, text, expected) => {
    expect(cells(text)).toEqual(expected);
    expect(readCsv(text).faults).toEqual([]);
  });

  test('what is written is quoted where it must be, and ended by CRLF', () => {
    expect(writeCsv([['a', 'b,c', 'd"e', 'f\ng', ' h']], ',')).toBe('a,"b,c","d""e","f\ng"," h"\r\n');
  });
});

describe('beside it', () => {
  test('semicolons, tabs, a byte order mark, "sep=", bare CR or LF, empty lines, empty last cells', () => {
    expect(cells('\uFEFFa;b\n1;2,5')).toEqual([
      ['a', 'b'],
      ['1', '2,5'],
    ]);
    expect(cells('a\tb\r1\t2')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
    expect(cells('sep=;\r\na,x;b\r\n')).toEqual([['a,x', 'b']]);
    expect(cells('a,b\n\n , \n1,\n')).toEqual([
      ['a', 'b'],
      ['1', ''],
    ]);
    expect(cells('a,b,')).toEqual([['a', 'b', '']]);
    expect(cells('week;Lemonade, 0.5 l, big\n50;1,8')).toEqual([
      ['week', 'Lemonade, 0.5 l, big'],
      ['50', '1,8'],
    ]);
    expect(cells('a;b,c,d\n1,2,3')[1]).toEqual(['1', '2', '3']);
    expect(cells('"a;b",c')).toEqual([['a;b', 'c']]);
  });

  test('lines are those of the text, with the breaks inside cells counted', () => {
    const { rows } = readCsv('a,"b\nb\nb"\n\n1,2');
    expect(rows.at(-1)?.map(({ line, column }) => [line, column])).toEqual([
      [5, 1],
      [5, 2],
    ]);
  });

  test('a quote that isn’t closed, and text behind a closing one, are faults at their cell', () => {
    expect(
      readCsv('a,b\n1,"2').faults.map(({ cell, expected }) => [cell.line, cell.column, expected]),
    ).toEqual([[2, 2, 'a closing quote (") after it']]);
    expect(readCsv('a,b\n"1"x,2').faults).toHaveLength(1);
    expect(cells('a,b\n"1" ,2')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });
});
