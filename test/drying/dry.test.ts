import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BinderShare, blend } from '../../language/src/drying/base.ts';
import { type DryingInput, dry } from '../../language/src/drying/dry.ts';
import {
  pigmentFactor,
  q10FromActivation,
  skinFactor,
  temperatureFactor,
} from '../../language/src/drying/factors.ts';
import { asGround, dryGround } from '../../language/src/drying/grounds.ts';
import { ALKYD, HOURS, Q10 } from '../../language/src/drying/settings.ts';
import { binder, dryingFactor, grounds } from '../../language/src/materials/catalogue.ts';
import { exactly, type Interval } from '../../language/src/materials/interval.ts';

const oil = (id: string, volume = 1): BinderShare => ({ binder: binder(id)!, volume });
const film = (binders: readonly BinderShare[], more: Partial<DryingInput> = {}) =>
  dry({ binders, pigments: [], dryFilm: exactly(30), temperature: exactly(20), ...more })!;
const within = (x: number, { low, high }: Interval) => {
  expect(x).toBeGreaterThanOrEqual(low);
  expect(x).toBeLessThanOrEqual(high);
};

describe('alkyd paint (Kay, Studio Methods and Materials, 1983, p.199)', () => {
  const paint = film([oil('alkyd')]);
  it('is dry to the touch in 8 h', () => {
    expect(paint.touchDry.likely).toBeCloseTo(8 * HOURS, 6);
    within(8 * HOURS, paint.touchDry);
  });
  it('is tacky in 4 h: about where it stops being open', () => within(4 * HOURS, paint.open));
  it('is solid in 18 h', () => within(18 * HOURS, paint.firm));
  it('may be overpainted the next day', () => {
    expect(paint.ready.likely).toBe(ALKYD.overpaint);
    within(1, paint.ready);
  });
});

describe('temperature', () => {
  it('66 kJ/mol is a Q10 of 2.44 (J. Agric. Food Chem. 53 (2005) 9073, abstract; our arithmetic), and 62 to 70 stay near', () => {
    expect(q10FromActivation(66, 20)).toBeCloseTo(2.44, 2);
    expect(Q10.likely).toBeCloseTo(q10FromActivation(66, 20), 1);
    within(q10FromActivation(62, 20), { ...Q10, high: 2.6 });
  });
  it('warmth quickens, cold slows, 20 °C leaves as it is', () => {
    expect(temperatureFactor(exactly(20))).toEqual(exactly(1));
    expect(temperatureFactor(exactly(30)).high).toBeLessThan(1);
    expect(temperatureFactor(exactly(10)).low).toBeGreaterThan(1);
  });
});

describe('oils', () => {
  it('a blend dries at the average of its rates by volume', () => {
    const { likely } = blend([oil('linseed'), oil('safflower')])!;
    const [l, s] = [blend([oil('linseed')])!.likely, blend([oil('safflower')])!.likely];
    expect(likely).toBeCloseTo(2 / (1 / l + 1 / s), 9);
  });
  it('boiled linseed dries to a firm smooth film in 2 days (Gardner 1911)', () => {
    const boiled = film([oil('boiled-linseed')]);
    within(2, { low: boiled.touchDry.low, likely: 0, high: boiled.firm.high });
    expect(boiled.touchDry.high).toBeLessThanOrEqual(2 + 1e-9);
  });
  it('slow colours take 3 to 5 days in a thin film without drier (Saitzyk, Art Hardware, 1987)', () => {
    const { touchDry } = film([oil('linseed')], {
      pigments: [{ factor: dryingFactor('retarder'), volume: 1 }],
      dryFilm: { low: 10, likely: 15, high: 20 },
    });
    within(4, touchDry);
  });
  it('wax and balsam do not set the pace of an oil', () => {
    expect(film([oil('linseed', 0.9), oil('beeswax', 0.1)]).touchDry).toEqual(
      film([oil('linseed')]).touchDry,
    );
  });
});

describe('an alkyd film in a session of three hours (common practice)', () => {
  const thin = { dryFilm: exactly(8) };
  it('sets before it can be wiped out', () => {
    expect(film([oil('alkyd')], thin).open.likely).toBeLessThan(3 * HOURS);
  });
  it('stays open with half safflower', () => {
    expect(film([oil('alkyd'), oil('safflower')], thin).open.likely).toBeGreaterThan(3 * HOURS);
  });
});

describe('setting is not drying', () => {
  const session = 3 * HOURS;
  const at = (thick: number, ...binders: readonly BinderShare[]) =>
    film(binders, { dryFilm: exactly(thick) }).open;
  it('5 µm with half alkyd in the solids is too sticky to wipe out within a sitting (common practice)', () => {
    const open = at(5, oil('alkyd'), oil('linseed'));
    expect(open.likely).toBeLessThan(session);
    expect(open.high).toBeLessThan(3 * session);
  });
  it('soft resin sets a glaze sooner, and its skin dries no faster for it (MITRA forum of the University of Delaware, question 349, 2017)', () => {
    const [resinous, plain] = [film([oil('damar'), oil('linseed')]), film([oil('linseed')])];
    expect(resinous.open.likely).toBeLessThan(0.5 * plain.open.likely);
    expect(resinous.touchDry).toEqual(plain.touchDry);
  });
  it('an alkyd of the usual thickness sets when it is tacky: 4 h (Kay 1983, p.199)', () => {
    within(4 * HOURS, at(30, oil('alkyd')));
  });
  it('the thinner and the richer in alkyd, the sooner', () => {
    for (const [thick, thin] of [
      [60, 30],
      [30, 15],
      [15, 8],
      [8, 4],
    ] as const)
      for (const end of ['low', 'likely', 'high'] as const)
        expect(at(thin, oil('alkyd'), oil('walnut'))[end]).toBeLessThanOrEqual(
          at(thick, oil('alkyd'), oil('walnut'))[end],
        );
    const shares = [0, 0.1, 0.25, 0.5, 0.75, 1];
    const likely = shares.map((s) => at(8, oil('alkyd', s), oil('walnut', 1 - s)).likely);
    expect(likely).toEqual(likely.toSorted((a, b) => b - a));
  });
  it('walnut, poppy and safflower keep it open longer than linseed (common practice)', () => {
    for (const id of ['walnut', 'poppy', 'safflower'])
      for (const thick of [5, 30])
        for (const alkyd of [0, 0.3, 0.5])
          expect(at(thick, oil('alkyd', alkyd), oil(id, 1 - alkyd)).likely).toBeGreaterThan(
            at(thick, oil('alkyd', alkyd), oil('linseed', 1 - alkyd)).likely,
          );
  });
  it('oil without alkyd or resin is open as long as before, however thin', () => {
    expect(at(5, oil('linseed'))).toEqual(at(15, oil('linseed')));
  });
});

describe('pigments', () => {
  it('a drier and a retarder of opposite strength cancel', () => {
    expect(
      pigmentFactor([
        { factor: 0.5, volume: 1 },
        { factor: 2, volume: 1 },
      ]),
    ).toBeCloseTo(1, 12);
    expect(pigmentFactor([])).toBe(1);
  });
  it('lamp black may keep a film soft for a year below a dry skin (Toch, Materials for Permanent Painting, 1911)', () => {
    const black = film([oil('linseed')], { pigments: [{ code: 'PBk6', factor: 3, volume: 1 }] });
    expect(black.firm.high).toBeGreaterThanOrEqual(365);
    expect(black.touchDry.high).toBeLessThan(365);
  });
});

describe('thickness', () => {
  it('leaves the skin alone below 15 and above 60 µm, and never stops the depth', () => {
    expect(skinFactor(exactly(5))).toEqual(skinFactor(exactly(15)));
    expect(skinFactor(exactly(500))).toEqual(skinFactor(exactly(60)));
    expect(film([oil('linseed')], { dryFilm: exactly(500) }).firm.likely).toBeGreaterThan(
      5 * film([oil('linseed')], { dryFilm: exactly(60) }).firm.likely,
    );
  });
});

describe('grounds', () => {
  it('an acrylic ground: 3 days least, 14 usual, 30 best (common practice)', () => {
    const acrylic = dryGround(grounds.find((g) => g.id === 'acrylic')!);
    expect(acrylic.ready).toEqual({ low: 3, likely: 14, high: 30 });
    expect(acrylic.touchDry.high).toBeLessThan(1);
  });
  it('an oil ground: weeks to months', () => {
    const ground = grounds.find((g) => g.kind === 'oil')!;
    const laid = asGround(film([oil('linseed')]), ground);
    expect(laid.ready.low).toBeGreaterThanOrEqual(14);
    expect(laid.ready.high).toBeGreaterThanOrEqual(60);
  });
});

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const interval = (min: number, max: number): fc.Arbitrary<Interval> =>
  fc.tuple(figure(min, max), figure(min, max), figure(min, max)).map((three) => {
    const [low, likely, high] = three.toSorted((a, b) => a - b);
    return { low: low!, likely: likely!, high: high! };
  });

describe('whatever the film', () => {
  const names = [
    'linseed',
    'walnut',
    'safflower',
    'stand-oil',
    'alkyd',
    'damar',
    'beeswax',
    'egg',
    'acrylic',
  ];
  const input: fc.Arbitrary<DryingInput> = fc.record({
    binders: fc.array(
      fc.record({ binder: fc.constantFrom(...names.flatMap((n) => binder(n) ?? [])), volume: figure(0, 1) }),
      { maxLength: 4 },
    ),
    pigments: fc.array(
      fc.record({
        code: fc.constantFrom('PBk6', 'PW1'),
        factor: fc.constantFrom(0.4, 0.7, 1, 1.8, 3),
        volume: figure(0, 1),
      }),
      { maxLength: 4 },
    ),
    dryFilm: interval(0.1, 10_000),
    temperature: interval(-20, 60),
  });

  it('intervals are finite and in order, and open < touch-dry ≤ ready ≤ firm at each end', () => {
    fc.assert(
      fc.property(input, (given) => {
        const made = dry(given);
        if (!made) return;
        for (const x of [made.open, made.touchDry, made.ready, made.firm]) {
          expect(Number.isFinite(x.low + x.likely + x.high)).toBe(true);
          expect(x.low).toBeLessThanOrEqual(x.likely);
          expect(x.likely).toBeLessThanOrEqual(x.high);
        }
        for (const end of ['low', 'likely', 'high'] as const) {
          expect(made.open[end]).toBeLessThan(made.touchDry[end]);
          expect(made.touchDry[end]).toBeLessThanOrEqual(made.ready[end]);
          expect(made.ready[end]).toBeLessThanOrEqual(made.firm[end]);
        }
      }),
      { numRuns: 500, seed: 2005 },
    );
  });
});
