/**
 * The forty-seven reference vectors of the project, each by its id: computed here once with the project's own functions,
 * and the file that tests the matter closely beside it. A vector that the project cannot speak to says why.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compose } from '../language/src/film/compose.ts';
import { cpvc } from '../language/src/film/cpvc.ts';
import {
  paintMass,
  paintVolume,
  spreadingRate,
  wetFilm,
  wetFilmFromSpread,
} from '../language/src/film/spread.ts';
import { exactly } from '../language/src/materials/interval.ts';
import { yearsToDose } from '../language/src/permanence/fade.ts';
import { leadLimit } from '../language/src/studio/lead.ts';
import {
  concentration,
  mgPerM3ToPpm,
  mlToReach,
  mmHgToKPa,
  ppmToMgPerM3,
  saturationPpm,
} from '../language/src/studio/vapour.ts';
import { figure, film, oil, pasteOf, pigment } from './film/materials.ts';

interface Vector {
  readonly id: string;
  readonly source: string;
  /** test file, and words in it that show the vector is there */
  readonly closely: readonly [file: string, words: string];
  /** computed, expected, greatest difference; absent where `why` tells that nothing can be computed */
  readonly checks?: readonly (readonly [got: number, want: number, within: number])[];
  readonly why?: string;
}

const GS = 'Gettens & Stout, Painting Materials (1942)';
const GARDNER = 'Gardner, Paint Technology and Tests (1911)';
const ROOM = 'arithmetic of the reference: well-mixed box, ideal gas at 25 °C';
const NIOSH = 'NIOSH Pocket Guide to Chemical Hazards';
const SQUARE_FOOT = 0.09290304;
const GALLON_LITRES = 3.785411784;
const spread900 = (900 * SQUARE_FOOT) / GALLON_LITRES;

/** CPVC, or with the oil of a workable paint its PVC; per cent. */
const filled = (
  id: string,
  oil: number,
  density: number,
  percent: number,
  within: number,
  source: string,
  words: string,
): Vector => ({
  id,
  source,
  closely: ['film/cpvc.test.ts', words],
  checks: [[100 * cpvc(oil, density), percent, within]],
});

/** A paint of so many pounds of pigment in a US gallon of oil of 0.931, water at 8.33 lb a gallon as reckoned then. */
function gardner(pounds: number, gravity: number) {
  const share = (8.33 * 0.931) / (8.33 * 0.931 + pounds);
  const paste = pasteOf(pigment('p', figure(gravity), figure(20)), oil('linseed', 0.931), exactly(share));
  return compose(film([paste]))!;
}

const dense = (name: string, pounds: number, gravity: number, printed: number, words: string): Vector => ({
  id: `DENS-${name}`,
  source: GARDNER,
  closely: ['film/gardner.test.ts', words],
  checks: [[gardner(pounds, gravity).wetDensity.likely, printed, 0.05 * printed]],
});

const turpentine = 20 * 0.86 * 1000;
const room = (id: string, airChanges: number, mg: number, ppm: number, within: number): Vector => {
  const found = concentration(turpentine, 4, { volume: 30, airChanges })!;
  return {
    id,
    source: `${ROOM}; density and molar mass ${NIOSH}`,
    closely: ['studio/vapour.test.ts', id],
    checks: [
      [found, mg, within],
      [mgPerM3ToPpm(found, 136), ppm, within],
    ],
  };
};

const unit = (id: string, got: number, want: number, within: number, source: string): Vector => ({
  id,
  source,
  closely: ['studio/vapour.test.ts', id],
  checks: [[got, want, within]],
});

const vectors: readonly Vector[] = [
  filled('CPVC-TiO2', 20, 4.2, 52.68, 0.05, 'Lewarchik 2014; formula of the Asbeck & Van Loo type', 'rutile'),
  filled('CPVC-white lead', 9, 6.7, 60.8, 0.1, `${GS} p.149`, "'white lead'"),
  filled('CPVC-white lead high', 12, 6.7, 53.8, 0.1, `${GS} p.149`, 'white lead, hungry'),
  filled('CPVC-raw sienna', 50, 3.14, 37.3, 0.1, `${GS} p.149`, 'raw sienna'),
  filled('CPVC-raw umber', 80, 3.2, 26.8, 0.1, `${GS} p.168`, 'raw umber'),
  filled('CPVC-burnt umber', 80, 3.64, 24.3, 0.1, `${GS} p.168`, 'burnt umber'),
  filled('PVC-bone black (Church oil 88)', 88, 2.29, 31.7, 0.1, `Church 1915; density ${GS}`, 'bone black'),
  filled('PVC-Prussian blue (Church 72)', 72, 1.83, 41.5, 0.1, `Church 1915; density ${GS}`, 'Prussian blue'),
  filled('PVC-vermilion (Church 23)', 23, 8.09, 33.4, 0.1, `Church 1915; density ${GS}`, 'vermilion'),
  filled('PVC-zinc white (Church 19)', 19, 5.65, 46.6, 0.1, `Church 1915; density ${GS}`, 'zinc white'),
  filled('PVC-ultramarine (Church 34)', 34, 2.34, 54.0, 0.1, `Church 1915; density ${GS}`, 'ultramarine'),
  filled('CPVC-asphaltum', 150, 1.05, 37.3, 0.1, `${GS} p.94; density from memory`, 'asphaltum'),
  dense('Dutch process white lead', 20.49, 6.83, 2.45, 'Dutch process white lead'),
  dense('Quick process white lead', 20.34, 6.78, 2.47, 'quick process white lead'),
  dense('Zinc oxide', 16.68, 5.56, 2.12, 'zinc oxide'),
  dense('Sublimed white lead', 19.17, 6.45, 2.36, 'sublimed white lead'),
  dense('Lithopone', 12.78, 4.26, 1.8, 'lithopone'),
  dense('Red lead', 26.1, 8.7, 2.93, 'red lead'),
  dense('Bright red oxide', 15.78, 5.26, 2.05, 'bright red oxide'),
  dense('Venetian red', 9.3, 3.1, 1.52, 'Venetian red'),
  dense('French yellow ochre', 8.82, 2.94, 1.46, 'French yellow ochre'),
  dense('Natural barytes', 13.38, 4.46, 1.83, 'natural barytes'),
  dense('Blanc fixe', 12.69, 4.23, 1.84, 'blanc fixe'),
  dense('China clay', 8.01, 2.67, 1.34, 'china clay'),
  dense('Ultramarine blue', 7.2, 2.4, 1.29, 'ultramarine blue'),
  dense('Zinc chromate', 10.71, 3.57, 1.57, 'zinc chromate'),
  dense('Willow charcoal', 4.47, 1.49, 1.08, 'willow charcoal'),
  {
    id: 'PVC-all',
    source: `${GARDNER}, our arithmetic: pounds a gallon are three times the gravity`,
    closely: ['film/gardner.test.ts', '26.4'],
    // The gravity cancels: any three pounds a gallon for each unit of it.
    checks: [[100 * gardner(3 * 5, 5).pvc.likely, 26.4, 0.1]],
  },
  {
    id: 'SPREAD-900',
    source: GARDNER,
    closely: ['film/spread.test.ts', '900 square feet'],
    checks: [
      [spread900, 22.09, 0.1],
      [wetFilmFromSpread(spread900), 45.3, 0.1],
    ],
  },
  {
    id: 'GRAMS-900',
    source: `${GARDNER}: 900:6::5400:x`,
    closely: ['film/spread.test.ts', '36 g'],
    checks: [
      [
        paintMass(paintVolume(6 * SQUARE_FOOT, wetFilmFromSpread(spread900)), 5400 / GALLON_LITRES / 1000),
        36,
        0.01,
      ],
    ],
  },
  {
    id: 'SPREAD-65-125',
    source: 'published coverage sheet',
    closely: ['film/spread.test.ts', '5.2 m²'],
    checks: [[spreadingRate(wetFilm(125, 0.65)), 5.2, 0.01]],
  },
  {
    id: 'WFT-62',
    source: 'published note on wet and dry films',
    closely: ['film/spread.test.ts', '161 µm'],
    checks: [[wetFilm(100, 0.62), 161, 1]],
  },
  {
    id: 'WFT-10',
    source: 'published note on spread',
    closely: ['film/spread.test.ts', '10 m² a litre'],
    checks: [[wetFilmFromSpread(10), 100, 0.1]],
  },
  unit('PPM-toluene', ppmToMgPerM3(100, 92.14), 377, 1, 'published converter example'),
  unit('PPM-NH3', mgPerM3ToPpm(50, 17.03), 71.785, 0.05, 'published converter example'),
  unit('PPM-NIOSH-turpentine', ppmToMgPerM3(1, 136), 5.56, 0.01, NIOSH),
  unit('PPM-NIOSH-isopropanol', ppmToMgPerM3(1, 60.1), 2.46, 0.01, NIOSH),
  unit('PPM-NIOSH-ethanol', ppmToMgPerM3(1, 46.1), 1.89, 0.01, NIOSH),
  room('ROOM-turps-sealed', 0, 573, 103.1, 1),
  room('ROOM-turps-4h-0.5ACH', 0.5, 247.9, 44.6, 0.2),
  room('ROOM-turps-4h-2ACH', 2, 71.6, 12.9, 0.2),
  room('ROOM-turps-4h-6ACH', 6, 23.9, 4.3, 0.2),
  unit('ROOM-spirit-limit', mlToReach(350, 30, 0.78), 13.5, 0.1, `${ROOM}; limit NIOSH`),
  unit('SAT-turps', saturationPpm(mmHgToKPa(4)), 5263, 5, `${ROOM}; vapour pressure NIOSH`),
  unit('LEAD-PEL-hours', leadLimit(10), 40, 0.01, 'OSHA 29 CFR 1910.1025 appendix B'),
  {
    id: 'BW3-years',
    source: 'our arithmetic; dose of CIE 157:2004 from memory',
    closely: ['permanence/fade.test.ts', 'BW3-years'],
    checks: [[yearsToDose(3, 150, 3000)!, 6.67, 0.02]],
  },
  {
    id: 'GAIN-peak',
    source: `${GARDNER}, table XV: raw linseed without drier gains 14.48 % by days 7–8`,
    closely: ['drying/gardner-series.test.ts', '[7, 14.48]'],
    why: 'the project estimates when a film is dry, not the oxygen it has taken up: its intervals are held against the days of the printed series, no mass gain is computed',
  },
];

test('forty-seven, each once', () => {
  expect(vectors).toHaveLength(47);
  expect(new Set(vectors.map((v) => v.id)).size).toBe(47);
});

describe.each(vectors.map((v) => [v.id, v] as const))(
  '%s',
  (_, { checks, why, source, closely: [file, words] }) => {
    test(`holds (${source})`, () => {
      if (!checks) expect(why?.length).toBeGreaterThan(20);
      for (const [got, want, within] of checks ?? [])
        expect(Math.abs(got - want)).toBeLessThanOrEqual(within);
    });
    test(`is tested closely in ${file}`, () => {
      expect(readFileSync(new URL(file, import.meta.url), 'utf8')).toContain(words);
    });
  },
);
