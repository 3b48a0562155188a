/** Figures that the pages about films, drying, colour, studio and permanence print are those the code works with. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import * as charts from '../../language/build/optics/chart-pigments.ts';
import * as kin from '../../language/build/optics/kinship.ts';
import { WITHIN } from '../../language/build/optics/radius.ts';
import * as rescaled from '../../language/build/optics/rescaled.ts';
import * as settings from '../../language/src/drying/settings.ts';
import { RUB_OUT_OIL_DENSITY } from '../../language/src/film/cpvc.ts';
import { pasteFactor } from '../../language/src/film/paste.ts';
import { RESIDUE } from '../../language/src/film/residue.ts';
import { blueWoolOf } from '../../language/src/materials/blue-wool.ts';
import { allPigments, ground } from '../../language/src/materials/catalogue.ts';
import { dryingFactor } from '../../language/src/materials/drying-classes.ts';
import { usualPaste } from '../../language/src/materials/pastes.ts';
import { WIPED_OUT_KEEPS } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { DARKENING } from '../../language/src/permanence/darkening.ts';
import { HARMING_PAIRS } from '../../language/src/permanence/pairs-table.ts';
import { doseOf, LIGHT } from '../../language/src/permanence/permanence.ts';
import { SIZES } from '../../language/src/studio/familiar-sizes.ts';
import { WITHIN as PARTS_WITHIN, SMALL } from '../../language/src/studio/round-parts.ts';
import * as studio from '../../language/src/studio/settings.ts';
import { TUBE_ML } from '../../language/src/studio/shopping.ts';
import { MOLAR_VOLUME } from '../../language/src/studio/vapour.ts';
import { FILM } from '../../language/src/study/defaults.ts';

/** A page in one line, so that a figure may stand at the end of a line. */
const page = (name: string): string =>
  readFileSync(new URL(`../../language/docs/${name}.md`, import.meta.url), 'utf8').replace(/\s+/g, ' ');
const [figures, film, drying, colour, air, lasting] = [
  'figures',
  'film',
  'drying',
  'colour',
  'studio',
  'permanence',
].map(page) as [string, string, string, string, string, string];

describe('films', () => {
  test.each(Object.entries(FILM))('usual film of %s', (kind, { low, likely, high }) => {
    expect(film).toContain(`| ${kind} | ${low} | ${likely} | ${high} |`);
  });

  test('what stays of an oiling out', () => {
    expect(film).toContain(`${RESIDUE.low} to ${RESIDUE.high} µm of it stay, likely ${RESIDUE.likely}`);
  });

  test('the paste', () => {
    const plain = allPigments().find((p) => !p.paintOil && p.paste === usualPaste)!;
    const [low, likely, high] = ([-1, 0, 1] as const).map((end) => pasteFactor(plain, end));
    expect(film).toContain(`${likely} times that volume of binder, from ${low} up to ${high} times`);
    expect(figures).toContain(`${likely} × oil in the gaps, from ${low} to ${high}`);
    expect(film).toContain(`${RUB_OUT_OIL_DENSITY} cm³ for 100 g`);
  });
});

describe('amounts in parts', () => {
  test.each(SIZES.map((s) => [s.one, s.ml] as const))('%s', (one, ml) => {
    expect(air).toContain(`${one} (${ml}`);
  });
  test('within a tenth, let down below a twentieth, tubes', () => {
    expect([PARTS_WITHIN, SMALL]).toEqual([1 / 10, 1 / 20]);
    expect(air).toContain('right within a tenth of each');
    expect(air).toContain('less than a twentieth of the heap');
    expect(air).toContain(`of ${TUBE_ML} ml where they do not`);
  });
});

describe('drying', () => {
  const { OPEN, READY, FIRM, Q10, SKIN, FILM: reference, SOFT_BELOW } = settings;

  test('multiples of touch-dry', () => {
    expect(drying).toContain(`touch-dry × ${OPEN.low} to ${OPEN.high}, likely ${OPEN.likely}`);
    expect(drying).toContain(`touch-dry × ${READY.low} to ${READY.high}, likely ${READY.likely}`);
    expect(drying).toContain(`× ${FIRM.low} to ${FIRM.high}, likely ${FIRM.likely}`);
    expect(figures).toContain(`open = ${OPEN.likely} × touch-dry, from ${OPEN.low} to ${OPEN.high}`);
    expect(figures).toContain(`ready = ${READY.likely} × touch-dry, from ${READY.low} to ${READY.high}`);
  });

  test('thickness and warmth', () => {
    expect(drying).toContain(`between ${reference.thinnest} and ${reference.thickest} µm`);
    expect(drying).toContain(`n from ${SKIN.low} to ${SKIN.high}, likely ${SKIN.likely}`);
    expect(drying).toContain(`Q10 ${Q10.low} to ${Q10.high}, likely ${Q10.likely}`);
    expect(figures).toContain(`Q10 is ${Q10.low} to ${Q10.high}, likely ${Q10.likely}`);
    expect(SOFT_BELOW.from).toBe(0.25);
    expect(drying).toContain('a quarter of the pigment upwards, firm reaches to a year');
  });

  test('pigment factors', () => {
    for (const [kind, words] of [
      ['strong drier', 'Strong drier'],
      ['drier', 'drier'],
      ['neutral', 'neutral'],
      ['retarder', 'retarder'],
      ['strong retarder', 'strong retarder'],
    ] as const)
      expect(drying).toContain(`${words} ${dryingFactor(kind)}`);
  });

  test('grounds', () => {
    for (const [id, words] of [
      ['acrylic', 'Acrylic ground'],
      ['oil-ground', 'oil ground'],
    ] as const) {
      const { least, usual, best } = ground(id)!.ready;
      expect(drying).toMatch(new RegExp(`${words} ${least}, ${usual} and ${best}`));
    }
  });
});

test('colour: how far strengths may be off', () => {
  expect(colour).toContain(
    `two in three strengths within a factor of ${rescaled.STRENGTH_FACTOR} in B, ${charts.STRENGTH_FACTOR} in C, ${charts.EARTH_FACTOR} for natural earths, ${kin.STRENGTH_FACTOR} in D`,
  );
  expect(colour).toContain(`**${100 * WITHIN} % of measured colours`);
});

test('colour: the surface, and what is left of a film wiped out', () => {
  expect(GLOSS.k1).toBeCloseTo(0.04, 3);
  expect(GLOSS.k2).toBeCloseTo(0.596, 3);
  expect(colour).toContain('k1 = 0.040 and k2 = 0.596');
  expect(WIPED_OUT_KEEPS).toBe(0.25);
  expect(colour).toContain('A wiped-out film keeps a quarter');
});

describe('studio', () => {
  test('what preparation takes up', () => {
    for (const [method, { low, likely, high }] of Object.entries(studio.PREPARATION))
      expect(air).toMatch(new RegExp(`\\| ${method}[^|]* \\| ${low} \\| ${likely} \\| ${high} \\|`));
  });

  test('brushes, grounds, varnish, room', () => {
    const { BRUSHES, GROUND_SOLIDS, VARNISH_SOLIDS, CLOSED_ROOM, MIXING, WASTE } = studio;
    const percent = (x: number) => Math.round(100 * x);
    expect(air).toContain(
      `${BRUSHES.low} to ${BRUSHES.high} ml of thinner a sitting, likely ${BRUSHES.likely}`,
    );
    expect(air).toContain(
      `${percent(GROUND_SOLIDS.low)} to ${percent(GROUND_SOLIDS.high)} % solids, likely ${percent(GROUND_SOLIDS.likely)}`,
    );
    expect(air).toContain(
      `${percent(VARNISH_SOLIDS.low)} to ${percent(VARNISH_SOLIDS.high)} % resin by volume, likely ${percent(VARNISH_SOLIDS.likely)}`,
    );
    expect(air).toContain(
      `${CLOSED_ROOM.low} to ${CLOSED_ROOM.high} air change an hour, likely ${CLOSED_ROOM.likely}`,
    );
    expect([MIXING.low, MIXING.likely, MIXING.high]).toEqual([1, Math.sqrt(3), 3]);
    expect(figures).toContain('a mixing factor of 1 to 3, likely √3');
    expect(WASTE).toBe(0.25);
    expect(figures).toContain('× 1.25');
    expect(figures).toContain(`× ${MOLAR_VOLUME} ÷ molar mass`);
  });
});

describe('permanence', () => {
  test.each(['II', 'III', 'IV', 'V'] as const)('dose of class %s', (kind) => {
    const { low, high } = doseOf(kind);
    const wool = [...new Set(blueWoolOf[kind])].join('–');
    expect(lasting).toContain(`| ${kind} | ${wool} | ${low} to ${high} |`);
  });

  test('the light that is taken', () => {
    expect(lasting).toContain(`${LIGHT.lux} lux, ${LIGHT.hoursPerYear} hours a year`);
  });

  test('as many pairs as the table has', () => {
    const rows = /\| pair \| where(.*?)The copper of/.exec(lasting)?.[1] ?? '';
    expect(rows.split(' | ').filter((cell) => cell === 'mixed' || cell === 'mixed or touching').length).toBe(
      // orpiment with copper and with lead share a row
      HARMING_PAIRS.length - 1,
    );
  });

  test('what darkens is named', () => {
    expect(DARKENING.length).toBe(14);
    for (const name of [
      'Smalt',
      'verdigris',
      'copper resinate',
      'emerald green',
      'azurite',
      'umbers',
      'raw sienna',
    ])
      expect(lasting).toContain(name);
    for (const name of [
      'vermilion',
      'red lead',
      'chrome',
      'zinc and strontium',
      'lithopone',
      'Cassel earth',
      'aureolin',
    ])
      expect(lasting).toContain(name);
  });
});
