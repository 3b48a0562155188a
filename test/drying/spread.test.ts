/**
 * How the days of many coats add up. The rule for errors that are partly the same is JCGM 100:2008 (Guide to the
 * expression of uncertainty in measurement) 5.2.2; the shares are assumptions of ours, and what is tried here is that
 * the printed days hold what they are said to hold when coats are drawn at random under those same assumptions.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHARED } from '../../language/src/drying/settings.ts';
import { after, fixed, latest, type Spread } from '../../language/src/drying/spread.ts';
import type { Interval } from '../../language/src/materials/interval.ts';

interface Step extends Interval {
  readonly what: string;
}
const laid = (steps: readonly Step[], from: Spread = fixed(0)): Spread =>
  steps.reduce((at, step) => after(at, step, step.what), from);
const total = (steps: readonly Step[], end: keyof Interval) => steps.reduce((sum, s) => sum + s[end], 0);

/** mulberry32: the same numbers at every run. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Ninety of a hundred values of a normal error lie within so many of its standard deviations (any table of it). */
const WITHIN = 1.645;

/** Days on which each of several stacks was ready, drawn so often. */
function drawn(stacks: readonly (readonly Step[])[], times: number, seed: number): number[] {
  const next = random(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  const paints = [...new Set(stacks.flat().map((s) => s.what))];
  return Array.from({ length: times }, () => {
    const room = normal();
    const paint = new Map(paints.map((p) => [p, normal()]));
    const ready = stacks.map((steps) =>
      steps.reduce((day, s) => {
        const z =
          Math.sqrt(SHARED.room) * room +
          Math.sqrt(SHARED.paint - SHARED.room) * paint.get(s.what)! +
          Math.sqrt(1 - SHARED.paint) * normal();
        const d = z < 0 ? s.likely - s.low : s.high - s.likely;
        return day + Math.max(0, s.likely + (d * z) / WITHIN);
      }, 0),
    );
    return Math.max(...ready);
  });
}

const oil = { low: 2.4, likely: 7, high: 20 };
const alkyd = { low: 0.3, likely: 1, high: 2.2 };
const many = (n: number, of: Interval, what: (i: number) => string): Step[] =>
  Array.from({ length: n }, (_, i) => ({ ...of, what: what(i) }));
const same = () => 'blue';
const other = (i: number) => `paint ${i}`;

describe('coats drawn at random', () => {
  const stacks: readonly (readonly [string, readonly (readonly Step[])[]])[] = [
    ['one coat', [many(1, oil, same)]],
    ['five coats of one paint', [many(5, oil, same)]],
    ['thirty alkyd glazes', [many(30, alkyd, same)]],
    ['a hundred coats of one paint', [many(100, oil, same)]],
    ['twelve coats of twelve paints', [many(12, oil, other)]],
    ['a slow paint under quick glazes', [[...many(2, oil, same), ...many(10, alkyd, () => 'quick')]]],
    ['two areas, one as slow as the other', [many(4, oil, same), many(4, oil, () => 'red')]],
    ['two areas, one much slower', [many(4, oil, same), many(2, alkyd, () => 'quick')]],
  ];
  it.each(stacks)('%s: nine in ten lie between not before and safe from', (_, of) => {
    const day = of.map((steps) => laid(steps)).reduce(latest);
    const days = drawn(of, 4000, 1983);
    const share = (100 * days.filter((x) => x >= day.low && x <= day.high).length) / days.length;
    expect(SHARED.held).toBe(90);
    expect(share).toBeGreaterThan(SHARED.held - 3);
    expect(share).toBeLessThan(SHARED.held + 6);
    // neither end does the work of both
    expect(days.filter((x) => x > day.high).length / days.length).toBeLessThan(0.1);
    expect(days.filter((x) => x < day.low).length / days.length).toBeLessThan(0.1);
  });
});

describe('steps', () => {
  it('one keeps its own range', () => {
    const day = after(fixed(20_000), oil, 'blue');
    expect(day.low).toBeCloseTo(20_002.4, 9);
    expect(day.likely).toBe(20_007);
    expect(day.high).toBeCloseTo(20_020, 9);
  });

  it('two err as the guide says: D² = d₁² + d₂² + 2 r d₁ d₂', () => {
    const of = (r: number) => Math.sqrt(2 * 13 ** 2 * (1 + r));
    expect(laid(many(2, oil, same)).high).toBeCloseTo(14 + of(SHARED.paint), 9);
    expect(laid(many(2, oil, other)).high).toBeCloseTo(14 + of(SHARED.room), 9);
  });

  it('a day that is known has no range, and a wait adds none', () => {
    expect(after(fixed(3), { low: 14, likely: 14, high: 14 }, 'x', 2)).toMatchObject({
      low: 31,
      likely: 31,
      high: 31,
    });
  });

  const step: fc.Arbitrary<Step> = fc
    .tuple(
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.constantFrom('blue', 'red', 'green'),
    )
    .map(([low, sooner, later, what]) => ({ low, likely: low + sooner, high: low + sooner + later, what }));
  const steps = fc.array(step, { maxLength: 12 });
  const HAIR = 1e-6;

  it('whatever they are, the days lie in order, between the sums of the extremes', () => {
    fc.assert(
      fc.property(steps, steps, steps, (one, two, on) => {
        const day = laid(on, latest(laid(one), laid(two)));
        const sum = (end: keyof Interval) => Math.max(total(one, end), total(two, end)) + total(on, end);
        expect(day.likely).toBeCloseTo(sum('likely'), 6);
        expect(day.low).toBeGreaterThanOrEqual(sum('low') - HAIR);
        expect(day.low).toBeLessThanOrEqual(day.likely + HAIR);
        expect(day.high).toBeGreaterThanOrEqual(day.likely - HAIR);
        expect(day.high).toBeLessThanOrEqual(sum('high') + HAIR);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('one more never makes a later day earlier, wherever it is put', () => {
    fc.assert(
      fc.property(steps, step, steps, (before, more, behind) => {
        const without = laid([...before, ...behind]);
        const day = laid([...before, more, ...behind]);
        for (const end of ['low', 'likely', 'high'] as const)
          expect(day[end]).toBeGreaterThanOrEqual(without[end] - HAIR);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('n at once are n one by one', () => {
    fc.assert(
      fc.property(steps, step, fc.integer({ min: 0, max: 40 }), (before, of, n) => {
        const from = laid(before);
        const at = after(from, of, of.what, n);
        const each = laid(
          many(n, of, () => of.what),
          from,
        );
        for (const end of ['low', 'likely', 'high'] as const) expect(at[end]).toBeCloseTo(each[end], 6);
      }),
      { numRuns: 200, seed: 13 },
    );
  });
});
