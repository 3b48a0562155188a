/** Every figure of the tables names its source and stays within what is physically possible. */
import { describe, expect, test } from 'vitest';
import { agents } from '../../language/src/materials/agents.ts';
import { binders } from '../../language/src/materials/binders.ts';
import { blueWoolOf, blueWoolSource, blueWools } from '../../language/src/materials/blue-wool.ts';
import { dryingFactor, dryingFactorsSource } from '../../language/src/materials/drying-classes.ts';
import { filmWords, filmWordsSource } from '../../language/src/materials/film-words.ts';
import { grounds } from '../../language/src/materials/grounds.ts';
import { pigments } from '../../language/src/materials/pigments.ts';
import { solvents } from '../../language/src/materials/solvents.ts';
import { supports } from '../../language/src/materials/supports.ts';
import type { Figure, Mark } from '../../language/src/materials/types.ts';

const MARKS: readonly Mark[] = [
  'published',
  'second-hand',
  'memory',
  'common practice',
  'derived',
  'assumption',
];
const isObject = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null;
const isFigure = (x: Record<string, unknown>) => 'low' in x || 'high' in x;

/** Every object inside, with where it stands. */
function* within(x: unknown, path: string): Generator<readonly [string, Record<string, unknown>]> {
  if (!isObject(x)) return;
  if (!Array.isArray(x)) yield [path, x];
  for (const [key, value] of Object.entries(x)) yield* within(value, `${path}.${key}`);
}

const everything = { pigments, binders, solvents, supports, grounds, agents, blueWools };

test('every figure and statement has a source with words and a mark; low is not above high', () => {
  let figures = 0;
  for (const [path, x] of within(everything, 'tables')) {
    if (isFigure(x)) {
      figures++;
      const f = x as unknown as Figure;
      expect(Number.isFinite(f.low) && Number.isFinite(f.high) && f.low <= f.high, path).toBe(true);
      expect(x.source, path).toBeDefined();
    }
    if ('value' in x) {
      expect(x.source, path).toBeDefined();
      expect(String(x.value).length, path).toBeGreaterThan(0);
    }
    if ('mark' in x) {
      expect(MARKS, path).toContain(x.mark);
      expect(String(x.text).length, path).toBeGreaterThan(3);
    }
  }
  expect(figures).toBeGreaterThan(500);
});

test('what is remembered is marked so', () => {
  for (const [path, x] of within(everything, 'tables'))
    if ('mark' in x && /^memory|: memory|from memory/.test(String(x.text)))
      expect(['memory', 'assumption'], `${path}: ${x.text}`).toContain(x.mark);
});

test('the tables are as large as the reference tables they were built from, and more', () => {
  expect(pigments.length).toBeGreaterThanOrEqual(83 + 12);
  expect(binders.length).toBeGreaterThanOrEqual(18 + 8);
  expect(solvents.length).toBeGreaterThanOrEqual(12);
  expect(supports.length).toBeGreaterThanOrEqual(13);
  expect(grounds.length).toBeGreaterThanOrEqual(20);
});

const between = (f: Figure | undefined, low: number, high: number, what: string) => {
  if (f) expect([f.low >= low, f.high <= high], `${what}: ${f.low}–${f.high}`).toEqual([true, true]);
};

describe('physically possible', () => {
  test.each(pigments.map((p) => [p.id, p] as const))('%s', (id, p) => {
    between(p.density, 1, 10, `${id} density`);
    between(p.oilAbsorption, 5, 250, `${id} oil absorption`);
    between(p.refractiveIndex, 1.35, 3.4, `${id} refractive index`);
    if (p.paintOil)
      expect(p.paintOil.high, `${id}: a paint holds more oil than a rub-out`).toBeGreaterThan(
        p.oilAbsorption.low,
      );
    expect(p.lightfastness !== undefined || p.lightfastnessNote !== undefined, id).toBe(true);
    const { from, to } = p.used;
    if (from !== undefined && to !== undefined) expect(from, id).toBeLessThan(to);
    if (from !== undefined) expect(from <= 2027 && from >= -40000, id).toBe(true);
    const { known, sold, common, rareAfter } = p.dates ?? {};
    const years = [known, sold, common, rareAfter].flatMap((d) => d?.year ?? []);
    expect(years, `${id}: known, sold, common, rare in order`).toEqual([...years].sort((a, b) => a - b));
    const { sure = [], beside = [], trace = [] } = p.elements ?? {};
    const elements = [...sure, ...beside, ...trace];
    expect(new Set(elements).size, `${id}: each element once`).toBe(elements.length);
    for (const symbol of elements) expect(symbol, id).toMatch(/^[A-Z][a-z]?$/);
  });

  test('dates and elements are filled where a source tells them', () => {
    expect(pigments.filter((p) => p.dates).length).toBeGreaterThan(25);
    expect(pigments.filter((p) => p.elements?.sure.length).length).toBeGreaterThan(30);
  });

  test.each(binders.map((b) => [b.id, b] as const))('%s', (id, b) => {
    between(b.density, 0.85, 1.2, `${id} density`);
    between(b.solids, 0.04, 1, `${id} solids`);
    between(b.refractiveIndex, 1.33, 1.56, `${id} refractive index`);
    between(b.iodineValue, 0, 210, `${id} iodine value`);
    between(b.touchDry, 0, 90, `${id} touch-dry`);
    if (b.solids.low < 1)
      expect(
        solvents.map((s) => s.id),
        `${id}: what leaves it`,
      ).toContain(b.carrier);
    else expect(b.carrier, `${id}: nothing leaves it`).toBeUndefined();
  });

  test.each(solvents.map((s) => [s.id, s] as const))('%s', (id, s) => {
    between(s.density, 0.2, 1.1, `${id} density`);
    between(s.molarMass, 15, 200, `${id} molar mass`);
    between(s.vapourPressure, 0.01, 101, `${id} vapour pressure`);
    const ratios = s.limits.flatMap((l) =>
      l.ppm && l.mgPerM3 && s.molarMass ? [(l.ppm * s.molarMass.low) / 24.45 / l.mgPerM3] : [],
    );
    // ppm and mg/m³ of one limit say the same (25 °C, 24.45 l/mol); agencies round, and their spirits by a tenth and more
    for (const ratio of ratios)
      expect(Math.abs(ratio - 1), `${id} ${ratio}`).toBeLessThan(
        { 'odourless-spirit': 0.75, 'white-spirit': 0.1, ammonia: 0.1 }[id] ?? 0.05,
      );
  });

  test.each([...supports, ...grounds].map((x) => [x.id, x] as const))('%s has a possible colour', (_, x) => {
    const [l, a, b] = x.colour;
    expect(l > 0 && l <= 100 && Math.abs(a) < 60 && Math.abs(b) < 100).toBe(true);
  });

  test.each(grounds.map((g) => [g.id, g] as const))('%s: least, usual, best days in order', (_, g) => {
    expect(g.ready.least <= g.ready.usual && g.ready.usual <= g.ready.best).toBe(true);
  });
});

test('an acrylic ground waits three days, two weeks, a month (common practice)', () => {
  expect(grounds.find((g) => g.id === 'acrylic')?.ready).toMatchObject({ least: 3, usual: 14, best: 30 });
});

test('the blue wool doses rise by about three a class without ultraviolet (CIE 157:2004, from memory)', () => {
  expect(blueWools.map((b) => b.withoutUv)).toEqual([0.3, 1, 3, 10, 30, 100, 300, 1100]);
  expect(blueWools.map((b) => b.withUv)).toEqual([0.22, 0.6, 1.5, 3.5, 8, 20, 50, 120]);
  for (const b of blueWools) expect(b.source.mark).toBe('memory');
});

test('lightfastness classes lie on the blue wool scale without gaps (trade mapping)', () => {
  expect(blueWoolOf).toEqual({ I: [7, 8], II: [6, 6], III: [4, 5], IV: [2, 3], V: [1, 1] });
  expect(blueWoolSource.mark).toBe('common practice');
});

test('drying factors are placeholders and say so', () => {
  expect(
    (['strong drier', 'drier', 'neutral', 'retarder', 'strong retarder'] as const).map(dryingFactor),
  ).toEqual([0.4, 0.7, 1, 1.8, 3]);
  expect(dryingFactorsSource.mark).toBe('assumption');
});

test('a painter’s words for a film are ranges in order', () => {
  expect(Object.entries(filmWords).map(([w, f]) => [w, f.low, f.high])).toEqual([
    ['wash', 0.5, 3],
    ['veil', 3, 10],
    ['thin', 10, 25],
    ['full', 25, 80],
    ['impasto', 200, 3000],
  ]);
  expect(filmWordsSource.mark).toBe('common practice');
});
