/** Paint densities printed in Gardner, Paint Technology and Tests (1911), steel-panel table: pounds of pigment in a US gallon of oil. */
import { describe, expect, it } from 'vitest';
import { compose } from '../../language/src/film/compose.ts';
import { exactly } from '../../language/src/materials/interval.ts';
import { figure, film, oil, pasteOf, pigment } from './materials.ts';

const OIL = 0.931;
/** lb of water in a US gallon, as reckoned then */
const GALLON = 8.33;

const table: readonly (readonly [string, number, number, number])[] = [
  ['Dutch process white lead', 6.83, 20.49, 2.45],
  ['quick process white lead', 6.78, 20.34, 2.47],
  ['zinc oxide', 5.56, 16.68, 2.12],
  ['sublimed white lead', 6.45, 19.17, 2.36],
  ['lithopone', 4.26, 12.78, 1.8],
  ['red lead', 8.7, 26.1, 2.93],
  ['bright red oxide', 5.26, 15.78, 2.05],
  ['Venetian red', 3.1, 9.3, 1.52],
  ['French yellow ochre', 2.94, 8.82, 1.46],
  ['natural barytes', 4.46, 13.38, 1.83],
  ['blanc fixe', 4.23, 12.69, 1.84],
  ['china clay', 2.67, 8.01, 1.34],
  ['ultramarine blue', 2.4, 7.2, 1.29],
  ['zinc chromate', 3.57, 10.71, 1.57],
  ['willow charcoal', 1.49, 4.47, 1.08],
];

describe('paint densities of Gardner 1911', () => {
  for (const [name, density, pounds, printed] of table)
    it(`${name}: ${printed} within 4 %, pigment 26.4 % of the film`, () => {
      const share = (GALLON * OIL) / (GALLON * OIL + pounds);
      const made = compose(
        film([pasteOf(pigment(name, figure(density), figure(20)), oil('linseed', OIL), exactly(share))]),
      );
      expect(Math.abs(made!.wetDensity.likely / printed - 1)).toBeLessThan(0.04);
      // our arithmetic from the printed pounds; sublimed white lead is printed a little under three times its gravity
      expect(Math.abs(100 * made!.pvc.likely - 26.4)).toBeLessThanOrEqual(0.11);
    });
});
