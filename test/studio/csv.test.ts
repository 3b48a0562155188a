/** The materials list as RFC 4180 has it, read back with a general-purpose parser (csv-parse). */
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csv } from '../../language/src/studio/csv.ts';

const back = (text: string): string[][] => parse(text, { relax_column_count: true });

test('lines end with CR LF and quotes are doubled (RFC 4180, 2.1 and 2.7)', () => {
  expect(csv([['a "b", c', 1.5], ['two\nlines']])).toBe('"a ""b"", c",1.5\r\n"two\nlines"\r\n');
});

test('any text comes back as it was, save for the apostrophe that keeps it from being a formula', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.string({ unit: 'grapheme', minLength: 1 }), { minLength: 2, maxLength: 5 }), {
        minLength: 1,
      }),
      (rows) => {
        const read = back(csv(rows));
        expect(read.length).toBe(rows.length);
        for (const [i, row] of rows.entries())
          for (const [j, cell] of row.entries()) expect([cell, `'${cell}`]).toContain(read[i]![j]);
      },
    ),
    { numRuns: 500, seed: 5 },
  );
});

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '|cmd', '%0A=1', '\u00a0=1'])(
  'no cell begins a formula: %j (spreadsheet formula injection, OWASP)',
  (text) => {
    expect(back(csv([[text, 'x']]))[0]![0]).toBe(`'${text}`);
  },
);

test('figures stay figures; what is no number is left empty', () => {
  expect(csv([[-1.5, 0, Number.NaN, Number.POSITIVE_INFINITY, undefined]])).toBe('-1.5,0,,,\r\n');
});
