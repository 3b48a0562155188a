/**
 * Films solved for a lightness: laid as found, the study itself predicts what was wanted. That a film tends to the
 * colour of an endless one, and that a glaze darkens and a scumble lightens, are Kubelka & Munk (1931) and common practice.
 */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { hints } from '../../language/src/features/hints.ts';
import { layerHover } from '../../language/src/features/hover.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { createStudyMemo, study } from '../../language/src/study/build.ts';

const HEAD = `plan "T"
support linen 40 x 50 cm
area sky 50 %
area sea 50 %
medium rich = 15 % turpentine + 25 % alkyd + 60 % walnut
paint white = PW6 in linseed
paint grey = 6 PW6 + 1 PBk9 in linseed
paint blue = PB29 in linseed
paint sienna = PBr7 burnt-sienna in linseed
paint red = PR83 in linseed
layer light { colour white   film 60 µm }
layer middle { on sea   colour grey   film 60 µm }
`;
const studied = (layers: string, head = HEAD) => study(readPlan(`${head}${layers}\n`, 'file:///a.paintplan'));
const lightness = (of: ReturnType<typeof studied>, name: string, area: string) =>
  of.layers
    .find((l) => l.layer.name === name)!
    .colours()
    .find((c) => c.area === area)!.lab[0];

describe('the predicted lightness is the one wanted', () => {
  const cases = ['blue', 'sienna', 'red', 'blue + sienna'].flatMap((paint) =>
    [80, 70, 60, 50].flatMap((l) => [1, 2].map((coats) => [paint, l, coats] as const)),
  );
  test.each(cases)('%s over white, L* %d in %d coats, within 0.1', (paint, wanted, coats) => {
    const film = (f: string) =>
      `glaze g { on sky   colour ${paint}   medium 60 % rich   film ${f}   coats ${coats} }`;
    const by = studied(film(`to lightness ${wanted}`));
    expect(by.layers[2]?.layer.film?.effect?.found?.reached).toBe(true);
    expect(Math.abs(lightness(by, 'g', 'sky') - wanted)).toBeLessThan(0.1);
    // the same film written in µm is the same layer, in colour, drying and amounts
    const um = by.layers[2]!.dryFilm!.likely / coats;
    const plain = studied(film(`${um} µm`));
    expect(lightness(plain, 'g', 'sky')).toBeCloseTo(lightness(by, 'g', 'sky'), 6);
    expect(plain.layers[2]?.drying).toEqual(by.layers[2]?.drying);
    expect(plain.layers[2]?.composition?.wetFilm.likely).toBeCloseTo(
      by.layers[2]!.composition!.wetFilm.likely,
      9,
    );
    expect(plain.quantities?.sessions).toEqual(by.quantities?.sessions);
  });
});

test('the darker the glaze, the thicker; a range of lightness is a range of films', () => {
  const film = (f: string) =>
    studied(`glaze g { on sky   colour blue   medium 60 % rich   film to lightness ${f} }`).layers[2]!;
  const [a, b, c] = ['80', '70', '60'].map((f) => film(f).dryFilm!.likely) as [number, number, number];
  expect(a).toBeLessThan(b);
  expect(b).toBeLessThan(c);
  const range = film('60..80').dryFilm!;
  expect(range.low).toBeCloseTo(a, 4);
  expect(range.likely).toBeCloseTo(b, 4);
  expect(range.high).toBeCloseTo(c, 4);
});

test('without an area the darkest counts; with one, that', () => {
  const film = (f: string) => studied(`scumble s { colour white   medium 40 % rich   film ${f} }`);
  const darkest = film('to lightness 75');
  expect(darkest.layers[2]?.layer.film?.effect?.found?.area).toBe('sea');
  expect(lightness(darkest, 's', 'sea')).toBeCloseTo(75, 1);
  const there = studied('glaze g { colour blue   medium 60 % rich   film to lightness 75 in sky }');
  expect(lightness(there, 'g', 'sky')).toBeCloseTo(75, 1);
});

test('films are solved from below upwards, and follow an edit beneath them', () => {
  const text = (below: string) =>
    `${HEAD}glaze a { on sky   colour sienna   medium 60 % rich   film to lightness ${below} }\nglaze b { on sky   colour blue   medium 60 % rich   film to lightness 60 }\n`;
  const memo = createStudyMemo();
  const film = (t: string, m = createStudyMemo()) => {
    const s = study(readPlan(t, 'file:///a.paintplan'), m);
    expect(lightness(s, 'b', 'sky')).toBeCloseTo(60, 1);
    return s.layers[3]!.dryFilm!.likely;
  };
  const first = film(text('85'), memo);
  const second = film(text('70'), memo);
  expect(second).toBeLessThan(first);
  expect(second).toBe(film(text('70')));
  expect(film(text('85'), memo)).toBe(first);
});

test('what no film reaches is the nearest of the usual ones, and never NaN', () => {
  for (const wanted of ['99', '0', '100', '0..100']) {
    const [, , g] = studied(
      `glaze g { on sea   colour blue   medium 60 % rich   film to lightness ${wanted} }`,
    ).layers;
    const { low, likely, high } = g!.dryFilm!;
    for (const um of [low, likely, high]) expect(um > 0 && um <= 300, `${wanted}: ${um}`).toBe(true);
    // usual glazes: 4 to 15 µm
    if (g!.layer.film?.effect?.found?.reached === false) expect(likely >= 4 && likely <= 15).toBe(true);
  }
});

test('the µm found is told beside the field and in the hover', () => {
  const layer = 'glaze g { on sky   colour blue   medium 60 % rich   film to lightness 70 }';
  const a = createAnalyser()(`${HEAD}${layer}\n`, 'file:///a.paintplan');
  const hint = hints(a.plan, a.study, true).find((h) => / µm$/.test(h.text))!;
  expect(hint.offset).toBe(`${HEAD}${layer}`.length - 2);
  expect(hint.tooltip).toContain('for L* 70 in ‘sky’');
  expect(layerHover(a.plan.layers[2]!, a.study)).toContain('for L\\* 70 in ‘sky’');
});
