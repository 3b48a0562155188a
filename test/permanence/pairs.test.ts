/** Pairs in plans; periods and darkening on pigments by hand, since the catalogue's own are tried in catalogue.test.ts. */
import { describe, expect, test } from 'vitest';
import type { Pigment } from '../../language/src/materials/types.ts';
import { DARKENING, darkens } from '../../language/src/permanence/darkening.ts';
import { harmingPairs } from '../../language/src/permanence/pairs.ts';
import { HARMING_PAIRS } from '../../language/src/permanence/pairs-table.ts';
import { periodConflict } from '../../language/src/permanence/period.ts';
import { figure, pigment } from '../film/materials.ts';
import { studied } from '../plan/text.ts';

const made = (code: string, more: Partial<Pigment> = {}): Pigment => ({
  ...pigment(code, figure(3), figure(30)),
  code,
  ...more,
});

/** Pairs told of layers, each the codes of its paint; one layer on the other, from the lowest up. */
const told = (...layers: readonly (readonly string[])[]) =>
  harmingPairs(
    studied(
      `plan "Made up"\n${layers.map((codes, i) => `layer l${i} { colour ${codes.map((c) => `1 ${c}`).join(' + ')} }\n`).join('')}`,
    ),
  ).map((m) => `${m.pigments[0].code}+${m.pigments[1].code} ${m.how}`);

const [LITHOPONE, LEAD, CADMIUM, VERDIGRIS, PHTHALO, ZINC, MADDER] = [
  'PW5',
  'PW1',
  'PY37',
  'PG20',
  'PG7',
  'PW4',
  'NR9',
];

describe('pairs', () => {
  test('lithopone with lead, mixed or touching (Gardner 1911)', () => {
    expect(told([LITHOPONE, LEAD])).toEqual(['PW5+PW1 mixed']);
    expect(told([LEAD], [LITHOPONE])).toEqual(['PW5+PW1 touching']);
    expect(told([LITHOPONE], [LEAD])).toEqual(['PW5+PW1 touching']);
    expect(told([LEAD], [ZINC], [LITHOPONE])).toEqual([]);
  });

  test('cadmium sulphides blacken copper salts, not the bound copper of phthalocyanines', () => {
    expect(told([CADMIUM, VERDIGRIS])).toEqual(['PY37+PG20 mixed']);
    expect(told([CADMIUM, PHTHALO])).toEqual([]);
    expect(told([VERDIGRIS], [CADMIUM])).toEqual([]);
  });

  test('zinc white hastens the fading of organic colours in a tint (Gettens & Stout 1942)', () => {
    expect(told([ZINC, MADDER])).toEqual(['PW4+NR9 mixed']);
    expect(told([ZINC, PHTHALO])).toEqual([]);
  });

  test('every pair names a source that was seen, or says it is told at second hand', () => {
    for (const { source } of HARMING_PAIRS) {
      expect(['published', 'second-hand']).toContain(source.mark);
      expect(source.text.length).toBeGreaterThan(10);
    }
    for (const { source, what } of DARKENING)
      expect([source.text, what].every((t) => t.length > 5)).toBe(true);
  });
});

describe('dates of use', () => {
  const used = (from?: number, to?: number) =>
    made('PX', { used: { from, to, words: '', source: { text: 'x', mark: 'memory' } } });
  test('to the year', () => {
    expect(periodConflict(used(1704), { from: 1640, to: 1703 })).toEqual({ kind: 'too-early', year: 1704 });
    expect(periodConflict(used(1704), { from: 1640, to: 1704 })).toEqual({
      kind: 'perhaps-too-early',
      year: 1704,
    });
    expect(periodConflict(used(1704), { from: 1704, to: 1720 })).toBeUndefined();
    expect(periodConflict(used(1300, 1700), { from: 1700, to: 1800 })).toBeUndefined();
    expect(periodConflict(used(1300, 1700), { from: 1701, to: 1800 })).toEqual({
      kind: 'after-use',
      year: 1700,
    });
    expect(periodConflict(used(), { from: -500, to: 2000 })).toBeUndefined();
    expect(periodConflict(used(-3000), { from: 1640, to: 1660 })).toBeUndefined();
  });
});

test('smalt greys, umbers darken, siennas burnt do not', () => {
  expect(darkens(made('PB32'))?.what).toMatch(/greys/);
  expect(darkens(made('PBr7', { variety: 'raw-umber' }))?.what).toMatch(/darkens/);
  expect(darkens(made('PBr7', { variety: 'burnt-sienna' }))).toBeUndefined();
  expect(darkens(made('PBr7'))).toBeUndefined();
});
