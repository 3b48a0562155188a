import { describe, expect, it } from 'vitest';
import type { Mix } from '../../language/src/plan/plan.ts';
import { createStudyMemo, study } from '../../language/src/study/build.ts';
import {
  code,
  colour,
  day,
  formula,
  layer,
  material,
  measure,
  medium,
  mix,
  paint,
  place,
  plan,
  stated,
  unknown,
  useMedium,
  useMix,
  usePaint,
  withMedium,
} from './plans.ts';

const white = paint('white', 'PW6', 'safflower');
const sienna = paint('sienna', 'PBr7 burnt-sienna');
const rich = medium('rich', [20, 'turpentine'], [20, 'alkyd'], [60, 'walnut']);

describe('a short plan', () => {
  const result = study(
    plan([
      layer('ground', 'priming', material('acrylic')),
      layer('glaze', 'first', colour([1, code('PY150')])),
    ]),
  );

  it('says what it assumed for everything it does not say', () => {
    const assumed = (l: number) => result.layers[l]!.assumptions.map((a) => a.field);
    expect(assumed(1)).toEqual(expect.arrayContaining(['film', 'coats', 'paint', 'oil', 'medium']));
    expect(result.assumptions.map((a) => a.field)).toEqual(
      expect.arrayContaining(['temperature', 'session', 'light-source']),
    );
  });
  it('leaves out what no figure rests on', () => {
    const fields = (of: Parameters<typeof plan>[0], kind: 'plan' | 'record' | 'palette') =>
      study(plan(of, { kind })).assumptions.map((a) => a.field);
    const fading = [layer('glaze', 'first', colour([1, code('PR83')]))];
    // years to a fade are told of a colour that fades, and never of an old painting
    expect(fields(fading, 'plan')).toContain('light');
    expect(fields(fading, 'record')).not.toContain('light');
    expect(fields([layer('glaze', 'first', colour([1, code('PY150')]))], 'plan')).not.toContain('light');
    expect(fields([], 'palette')).toEqual([]);
  });
  it('has a composition for the glaze and none for a named material', () => {
    expect(result.layers[0]!.composition).toBeUndefined();
    expect(result.layers[0]!.drying?.ready.likely).toBe(14);
    expect(result.layers[1]!.composition?.applied).toEqual([{ what: 'paint', name: 'PY150', share: 1 }]);
  });
  it('names its sources once', () => {
    const texts = result.sources.map((s) => s.text);
    expect(texts.length).toBeGreaterThan(3);
    expect(new Set(texts).size).toBe(texts.length);
  });
});

describe('the film of a ground that states none', () => {
  it.each([1, 2, 8])('is the table’s, in %i coats', (coats) => {
    const ground = layer('ground', 'g', { ...material('chalk-glue'), coats: measure(coats) });
    const [made] = study(plan([ground])).layers;
    for (const [end, film] of [
      ['low', 100],
      ['likely', 250],
      ['high', 400],
    ] as const)
      expect(made!.dryFilm![end]).toBeCloseTo(film, 9);
    const told = made!.assumptions.find((a) => a.field === 'film')!.value;
    expect(told).toContain('250 µm (100 to 400)');
    expect(told.includes('shared by')).toBe(coats > 1);
  });
  it('is per coat where it is written', () => {
    const ground = layer('ground', 'g', { ...material('chalk-glue'), coats: measure(2), film: measure(60) });
    expect(study(plan([ground])).layers[0]!.dryFilm!.likely).toBe(120);
  });
});

describe('formulas', () => {
  const film = (...parts: Parameters<typeof colour>) =>
    study(plan([layer('glaze', 'g', colour(...parts))])).layers[0]!.composition;

  it('opens mixes of mixes by volume', () => {
    const inner = mix(
      'inner',
      formula([
        [1, usePaint(white)],
        [1, usePaint(sienna)],
      ]),
    );
    const outer = mix(
      'outer',
      formula([
        [2, useMix(inner)],
        [2, usePaint(sienna)],
      ]),
    );
    const made = film([1, useMix(outer)])!;
    expect(made.applied).toEqual([
      { what: 'paint', name: 'white', share: 0.25 },
      { what: 'paint', name: 'sienna', share: 0.75 },
    ]);
  });

  it('turns grams into volume by the density of the paste', () => {
    const byMass = study(
      plan([
        layer('glaze', 'g', {
          colour: {
            kind: 'formula',
            formula: formula(
              [
                [1, usePaint(white)],
                [1, usePaint(sienna)],
              ],
              'g',
            ),
          },
        }),
      ]),
    );
    const [w, s] = byMass.layers[0]!.composition!.applied.map((a) => a.share);
    const alone = (p: typeof white) => film([1, usePaint(p)])!.wetDensity.likely;
    expect(w! / s!).toBeCloseTo(alone(sienna) / alone(white), 9);
  });

  it('opens a medium of mediums', () => {
    const both = {
      ...medium('both'),
      formula: formula([
        [1, useMedium(rich)],
        [1, useMedium(rich)],
      ]),
    };
    const one = study(
      plan([layer('glaze', 'g', { ...colour([1, usePaint(white)]), ...withMedium(0.5, rich) })]),
    ).layers[0]!.composition!;
    const two = study(
      plan([layer('glaze', 'g', { ...colour([1, usePaint(white)]), ...withMedium(0.5, both) })]),
    ).layers[0]!.composition!;
    expect(two.fatness).toEqual(one.fatness);
  });

  it('has no figures for what is unresolved or contains itself', () => {
    expect(film([1, usePaint(white)], [1, unknown])).toBeUndefined();
    const circle: { -readonly [K in keyof Mix]: Mix[K] } = mix('circle', formula([]));
    circle.formula = formula([
      [1, useMix(circle)],
      [1, usePaint(white)],
    ]);
    expect(film([1, useMix(circle)])).toBeUndefined();
    expect(film([0, usePaint(white)])).toBeUndefined();
  });

  it('survives ten thousand mixes inside one another', () => {
    let deep = mix('m', formula([[1, usePaint(white)]]));
    for (let i = 0; i < 10_000; i++) deep = mix(`m${i}`, formula([[1, useMix(deep)]]));
    expect(() => film([1, useMix(deep)])).not.toThrow();
  });

  it('takes the tubes of an egg layer in egg', () => {
    const egg = study(plan([layer('underlayer', 'u', { ...colour([1, code('PY43')]), ...material('egg') })]))
      .layers[0]!;
    expect(egg.composition!.binders.map((b) => b.binder)).toEqual(['egg-tempera']);
    expect(egg.drying!.ready.likely).toBe(1);
  });
});

describe('records', () => {
  const record = (of: ReturnType<typeof formula>) =>
    study(plan([layer('layer', 'l', { colour: { kind: 'formula', formula: of } })], { kind: 'record' }))
      .layers[0]!;

  it('a formula without amounts claims no proportions', () => {
    const made = record(
      formula(
        [
          [1, usePaint(white)],
          [1, usePaint(sienna)],
        ],
        'none',
      ),
    );
    expect(made.composition).toBeUndefined();
    expect(made.assumptions.some((a) => a.value === 'no proportions')).toBe(true);
  });
  it('one paint alone is what it is, and long dry', () => {
    const made = record(formula([[1, usePaint(white)]], 'none'));
    expect(made.composition).toBeDefined();
    expect(made.drying).toBeUndefined();
  });
});

describe('observations', () => {
  const glaze = (name: string, more = {}) =>
    layer('glaze', name, {
      ...colour([1, usePaint(sienna)]),
      ...withMedium(0.5, rich),
      film: measure(10),
      ...more,
    });
  const plain = study(plan([glaze('a'), glaze('b')]));
  const seen = study(
    plan([
      glaze('a', { painted: day('2027-01-01'), dry: day('2027-01-09') }),
      glaze('b'),
      layer('glaze', 'c', { ...colour([1, usePaint(white)]), film: measure(10) }),
    ]),
  );

  it('beat the estimate of the layer itself', () => {
    expect(seen.layers[0]!.drying!.touchDry).toEqual({ low: 7, likely: 8, high: 8 });
    expect(seen.layers[0]!.drying!.observed).toEqual({ layer: 'a', days: 8 });
  });
  it('recalibrate later layers of the same paint and medium, visibly, and no others', () => {
    const [was, is] = [plain.layers[1]!.drying!, seen.layers[1]!.drying!];
    expect(is.touchDry.likely).toBeCloseTo(8, 9);
    expect(is.observed).toEqual({ layer: 'a', days: 8 });
    expect(is.touchDry.high / is.touchDry.low).toBeLessThan(was.touchDry.high / was.touchDry.low);
    expect(seen.layers[1]!.assumptions.some((a) => a.field === 'drying' && a.why.includes('‘a’'))).toBe(true);
    expect(seen.layers[2]!.drying!.observed).toBeUndefined();
  });
  it('before the day it was painted count for nothing', () => {
    const odd = study(plan([glaze('a', { painted: day('2027-01-09'), dry: day('2027-01-01') })]));
    expect(odd.layers[0]!.drying!.observed).toBeUndefined();
  });
});

describe('memory', () => {
  const build = (share: number) =>
    plan(
      [0, 1, 2].map((i) =>
        layer('glaze', `g${i}`, {
          ...colour([1, usePaint(white)]),
          ...withMedium(i === 1 ? share : 0.3 + i / 10, rich),
        }),
      ),
    );

  it('keeps what an edit did not touch, and no more than two texts of it', () => {
    const memo = createStudyMemo();
    const first = study(build(0.4), memo);
    const second = study(build(0.5), memo);
    expect(second.layers[0]!.composition).toBe(first.layers[0]!.composition);
    expect(second.layers[1]!.composition).not.toBe(first.layers[1]!.composition);
    expect(second.layers[2]!.composition).toBe(first.layers[2]!.composition);
    for (let i = 0; i < 50; i++) study(build(0.5 + i / 1000), memo);
    expect(memo.layers.size).toBeLessThanOrEqual(6);
  });
  it('gives the same with and without it', () => {
    const memo = createStudyMemo();
    study(build(0.4), memo);
    expect(study(build(0.45), memo).layers.map((l) => l.composition)).toEqual(
      study(build(0.45)).layers.map((l) => l.composition),
    );
  });
});

describe('what lies beneath', () => {
  const on = ['sky', 'water'];
  const result = study(
    plan(
      [
        layer('ground', 'a'),
        layer('glaze', 'b', { areas: ['sky'] }),
        layer('glaze', 'c'),
        layer('glaze', 'd', { areas: ['water'] }),
      ],
      { on },
    ),
  );
  it('is told per area, nearest first', () => {
    expect([...result.layers[2]!.below]).toEqual([
      ['sky', [1, 0]],
      ['water', [0]],
    ]);
    expect(result.layers[3]!.below.get('water')).toEqual([2, 0]);
    expect(result.layers[3]!.below.get('sky')).toBeUndefined();
    expect(result.layers[0]!.below.get('sky')).toEqual([]);
    expect([...result.layers[2]!.below.values()].flat()).toEqual([1, 0, 0]);
  });
});

describe('areas without a share', () => {
  it('have equal parts of what the others leave', () => {
    const result = study(
      plan([], {
        areas: [
          { name: 'a', place, namePlace: place, share: measure(0.4) },
          { name: 'b', place, namePlace: place },
          { name: 'c', place, namePlace: place },
        ],
      }),
    );
    expect(result.areas.map((a) => a.share)).toEqual([0.4, 0.3, 0.3]);
  });
});

it('figures out of all bounds are taken at the bound, and nothing is ever NaN', () => {
  const mad = study(
    plan(
      [
        layer('glaze', 'g', {
          ...colour([1, usePaint(white)]),
          ...stated(''),
          film: measure(Number.NaN),
          coats: measure(1e12),
          wait: measure(-5),
          ...colour([1, usePaint(white)]),
        }),
      ],
      {
        studio: { temperature: measure(1e9) },
      },
    ),
  );
  expect(JSON.stringify([mad.layers[0]!.composition, mad.layers[0]!.drying, mad.calendar])).not.toMatch(
    /:(null|NaN|Infinity)/,
  );
});
