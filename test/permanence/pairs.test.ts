/** Pairs, periods and darkening on pigments by hand; the catalogue's own are tried in catalogue.test.ts. */
import { describe, expect, test } from 'vitest';
import { exactly } from '../../language/src/materials/interval.ts';
import type { Pigment } from '../../language/src/materials/types.ts';
import { DARKENING, darkens } from '../../language/src/permanence/darkening.ts';
import { harmingPairs } from '../../language/src/permanence/pairs.ts';
import { HARMING_PAIRS } from '../../language/src/permanence/pairs-table.ts';
import { periodConflict } from '../../language/src/permanence/period.ts';
import { figure, pigment } from '../film/materials.ts';
import { composition, layer, layerStudy } from '../studio/fixtures.ts';

const made = (code: string, more: Partial<Pigment> = {}): Pigment => ({
  ...pigment(code, figure(3), figure(30)),
  code,
  ...more,
});

const film = (name: string, index: number, pigments: readonly Pigment[], below: readonly number[] = []) =>
  layerStudy(layer(name, index), {
    composition: composition({
      pigments: pigments.map((p) => ({
        pigment: p,
        volumeFraction: exactly(0.2),
        massFraction: exactly(0.4),
      })),
    }),
    below: new Map([['everything', below]]),
  });

const lithopone = made('PW5');
const lead = made('PW1', { hazards: ['lead'] });
const cadmium = made('PY37');
const verdigris = made('PG20');
const phthalo = made('PG7');
const zinc = made('PW4');
const madder = made('NR9', { lightfastness: { value: 'II', source: { text: 'x', mark: 'memory' } } });

const told = (...layers: ReturnType<typeof film>[]) =>
  harmingPairs({ layers }).map((m) => `${m.pigments[0].code}+${m.pigments[1].code} ${m.how}`);

describe('pairs', () => {
  test('lithopone with lead, mixed or touching (Gardner 1911)', () => {
    expect(told(film('a', 0, [lithopone, lead]))).toEqual(['PW5+PW1 mixed']);
    expect(told(film('a', 0, [lead]), film('b', 1, [lithopone], [0]))).toEqual(['PW5+PW1 touching']);
    expect(told(film('a', 0, [lithopone]), film('b', 1, [lead], [0]))).toEqual(['PW5+PW1 touching']);
    expect(told(film('a', 0, [lead]), film('b', 1, [zinc], [0]), film('c', 2, [lithopone], [1, 0]))).toEqual(
      [],
    );
  });

  test('cadmium sulphides blacken copper salts, not the bound copper of phthalocyanines', () => {
    expect(told(film('a', 0, [cadmium, verdigris]))).toEqual(['PY37+PG20 mixed']);
    expect(told(film('a', 0, [cadmium, phthalo]))).toEqual([]);
    expect(told(film('a', 0, [verdigris]), film('b', 1, [cadmium], [0]))).toEqual([]);
  });

  test('zinc white hastens the fading of organic colours in a tint (Gettens & Stout 1942)', () => {
    expect(told(film('a', 0, [zinc, madder]))).toEqual(['PW4+NR9 mixed']);
    expect(told(film('a', 0, [zinc, phthalo]))).toEqual([]);
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
