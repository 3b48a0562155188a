import { describe, expect, it } from 'vitest';
import { createStudyMemo } from '../../language/src/study/build.ts';
import { studied } from '../plan/text.ts';

const HEAD = `support linen 40 x 50 cm
paint white = PW6 in safflower
paint sienna = PBr7 burnt-sienna in linseed
medium rich = 20 % turpentine + 20 % alkyd + 60 % walnut
`;
/** A study of layers, over one area where none is declared. */
const text = (layers: string, kind = 'plan') =>
  `${kind} "Test"\n${HEAD}${/^area /m.test(layers) ? '' : 'area all 100 %\n'}${layers}`;
const of = (layers: string, kind?: string) => studied(text(layers, kind));

describe('a short plan', () => {
  const result = of('ground priming { material acrylic }\nglaze first { colour PY150 }');

  it('says what it assumed for everything it does not say', () => {
    const assumed = (l: number) => result.layers[l]!.assumptions.map((a) => a.field);
    expect(assumed(1)).toEqual(expect.arrayContaining(['film', 'coats', 'paint', 'oil', 'medium']));
    expect(result.assumptions.map((a) => a.field)).toEqual(
      expect.arrayContaining(['temperature', 'session', 'light-source']),
    );
  });
  it('leaves out what no figure rests on', () => {
    const fields = (layers: string, kind?: string) => of(layers, kind).assumptions.map((a) => a.field);
    const fading = 'glaze first { colour PR83 }';
    // years to a fade are told of a colour that fades, and never of an old painting
    expect(fields(fading)).toContain('light');
    expect(fields(fading, 'record')).not.toContain('light');
    expect(fields('glaze first { colour PY150 }')).not.toContain('light');
    expect(studied('paint white = PW6 in safflower').assumptions).toEqual([]);
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
    const [made] = of(`ground g { material chalk-glue   coats ${coats} }`).layers;
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
    expect(of('ground g { material chalk-glue   coats 2   film 60 µm }').layers[0]!.dryFilm!.likely).toBe(
      120,
    );
  });
});

describe('formulas', () => {
  const film = (colour: string, more = '') =>
    of(`${more}\nglaze g { colour ${colour} }`).layers[0]!.composition;

  it('opens mixes of mixes by volume', () => {
    const mixes = 'mix inner = 1 white + 1 sienna\nmix outer = 2 inner + 2 sienna';
    expect(film('outer', mixes)!.applied).toEqual([
      { what: 'paint', name: 'white', share: 0.25 },
      { what: 'paint', name: 'sienna', share: 0.75 },
    ]);
  });

  it('turns grams into volume by the density of the paste', () => {
    const [w, s] = film('1 g white + 1 g sienna')!.applied.map((a) => a.share);
    const alone = (paint: string) => film(paint)!.wetDensity.likely;
    expect(w! / s!).toBeCloseTo(alone('sienna') / alone('white'), 9);
  });

  it('opens a medium of mediums', () => {
    const fatness = (medium: string) =>
      of(`medium both = 1 rich + 1 rich\nglaze g { colour white   medium 50 % ${medium} }`).layers[0]!
        .composition!.fatness;
    expect(fatness('both')).toEqual(fatness('rich'));
  });

  it('has no figures for what is unresolved or contains itself', () => {
    expect(film('1 white + 1 nothing')).toBeUndefined();
    expect(film('circle', 'mix circle = 1 circle + 1 white')).toBeUndefined();
    expect(film('0 white')).toBeUndefined();
  });

  it('survives ten thousand mixes inside one another', () => {
    const mixes = Array.from(
      { length: 10_000 },
      (_, i) => `mix m${i} = ${i === 0 ? 'white' : `m${i - 1}`}\n`,
    );
    expect(() => film('m9999', mixes.join(''))).not.toThrow();
  });

  it('takes the tubes of an egg layer in egg', () => {
    const egg = of('underlayer u { colour PY43   material egg }').layers[0]!;
    expect(egg.composition!.binders.map((b) => b.binder)).toEqual(['egg-tempera']);
    expect(egg.drying!.ready.likely).toBe(1);
  });
});

describe('records', () => {
  const record = (colour: string) => of(`layer l { colour ${colour} }`, 'record').layers[0]!;

  it('a formula without amounts claims no proportions', () => {
    const made = record('white + sienna');
    expect(made.composition).toBeUndefined();
    expect(made.assumptions.some((a) => a.value === 'no proportions')).toBe(true);
  });
  it('one paint alone is what it is, and long dry', () => {
    const made = record('white');
    expect(made.composition).toBeDefined();
    expect(made.drying).toBeUndefined();
  });
});

describe('observations', () => {
  const glaze = (name: string, more = '') =>
    `glaze ${name} { colour sienna   medium 50 % rich   film 10 µm   ${more} }\n`;
  const plain = of(glaze('a') + glaze('b'));
  const seen = of(
    `${glaze('a', 'painted 2027-01-01   dry 2027-01-09')}${glaze('b')}glaze c { colour white   film 10 µm }`,
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
    const odd = of(glaze('a', 'painted 2027-01-09   dry 2027-01-01'));
    expect(odd.layers[0]!.drying!.observed).toBeUndefined();
  });
});

describe('memory', () => {
  const build = (percent: number) =>
    text(
      [0, 1, 2]
        .map((i) => `glaze g${i} { colour white   medium ${i === 1 ? percent : 30 + 10 * i} % rich }\n`)
        .join(''),
    );

  it('keeps what an edit did not touch, and no more than two texts of it', () => {
    const memo = createStudyMemo();
    const first = studied(build(40), memo);
    const second = studied(build(50), memo);
    expect(second.layers[0]!.composition).toBe(first.layers[0]!.composition);
    expect(second.layers[1]!.composition).not.toBe(first.layers[1]!.composition);
    expect(second.layers[2]!.composition).toBe(first.layers[2]!.composition);
    for (let i = 0; i < 50; i++) studied(build(50 + i / 10), memo);
    expect(memo.layers.size).toBeLessThanOrEqual(6);
  });
  it('gives the same with and without it', () => {
    const memo = createStudyMemo();
    studied(build(40), memo);
    expect(studied(build(45), memo).layers.map((l) => l.composition)).toEqual(
      studied(build(45)).layers.map((l) => l.composition),
    );
  });
});

describe('what lies beneath', () => {
  const result = of(`area sky 50 %
area water 50 %
ground a { material acrylic }
glaze b { on sky   colour white }
glaze c { colour white }
glaze d { on water   colour white }
`);
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
    const result = of('area left 40 %\narea middle\narea right\n');
    expect(result.areas.map((a) => a.share)).toEqual([0.4, 0.3, 0.3]);
  });
});

it('figures out of all bounds are taken at the bound, and nothing is ever NaN', () => {
  const mad = of(
    'studio { temperature 1000000000 °C }\nglaze g { colour white   film 0 µm   coats 1000000000000   wait -5 days }',
  );
  expect(JSON.stringify([mad.layers[0]!.composition, mad.layers[0]!.drying, mad.calendar])).not.toMatch(
    /:(null|NaN|Infinity)/,
  );
});
