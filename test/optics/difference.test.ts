import { expect, test } from 'vitest';
import type { Lab } from '../../language/src/optics/cie.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { table } from './files.ts';

// Sharma, Wu and Dalal, Color Res. Appl. 30 (2005) 21: implementation notes and test data for CIEDE2000.
const pairs = table('ciede2000-pairs.csv').map((r) => ({
  pair: r.pair,
  one: [Number(r.L1), Number(r.a1), Number(r.b1)] as Lab,
  two: [Number(r.L2), Number(r.a2), Number(r.b2)] as Lab,
  published: Number(r.dE00),
}));

test('all 34 published pairs are there', () => expect(pairs).toHaveLength(34));

test.each(pairs)('pair $pair is $published', ({ one, two, published }) => {
  expect(Math.abs(deltaE00(one, two) - published)).toBeLessThan(1e-4);
  expect(deltaE00(two, one)).toBeCloseTo(deltaE00(one, two), 10);
});
