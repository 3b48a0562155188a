import { describe, expect, it } from 'vitest';
import { cpvc, cpvcOfMixture } from '../../language/src/film/cpvc.ts';

/** What was seen where: the oil figures are printed, the concentrations in all rows but the first are our arithmetic. */
const printed: readonly (readonly [string, number, number, number, number, string])[] = [
  ['rutile', 20, 4.2, 52.68, 0.05, 'Lewarchik 2014, coatings article; formula of the Asbeck & Van Loo type'],
  ['white lead', 9, 6.7, 60.8, 0.1, 'Gettens & Stout, Painting Materials (1942) p.149'],
  ['white lead, hungry', 12, 6.7, 53.8, 0.1, 'Gettens & Stout (1942) p.149'],
  ['raw sienna', 50, 3.14, 37.3, 0.1, 'Gettens & Stout (1942) p.149'],
  ['raw umber', 80, 3.2, 26.8, 0.1, 'Gettens & Stout (1942) p.168'],
  ['burnt umber', 80, 3.64, 24.3, 0.1, 'Gettens & Stout (1942) p.168'],
  ['asphaltum', 150, 1.05, 37.3, 0.1, 'Gettens & Stout (1942) p.94; density from memory'],
];

/** Church's oil of a workable paint put into the same formula gives that paint's concentration, not the critical one. */
const church: readonly (readonly [string, number, number, number])[] = [
  ['bone black', 88, 2.29, 31.7],
  ['Prussian blue', 72, 1.83, 41.5],
  ['vermilion', 23, 8.09, 33.4],
  ['zinc white', 19, 5.65, 46.6],
  ['ultramarine', 34, 2.34, 54.0],
];

describe('critical pigment volume concentration', () => {
  for (const [name, oil, density, percent, within, source] of printed)
    it(`of ${name} is ${percent} % (${source})`, () => {
      expect(Math.abs(100 * cpvc(oil, density) - percent)).toBeLessThanOrEqual(within);
    });

  for (const [name, oil, density, percent] of church)
    it(`formula gives the workable paint of ${name} (Church, Chemistry of Paints 1915; density Gettens & Stout)`, () => {
      expect(Math.abs(100 * cpvc(oil, density) - percent)).toBeLessThanOrEqual(0.1);
    });

  it('of a mixture lies between those of its pigments, and of one pigment twice is its own', () => {
    const lead = { mass: 1, density: 6.7, oilAbsorption: 9 };
    const umber = { mass: 1, density: 3.2, oilAbsorption: 80 };
    expect(cpvcOfMixture([lead, lead])).toBeCloseTo(cpvc(9, 6.7), 12);
    const both = cpvcOfMixture([lead, umber]);
    expect(both).toBeGreaterThan(cpvc(80, 3.2));
    expect(both).toBeLessThan(cpvc(9, 6.7));
    expect(cpvcOfMixture([])).toBe(1);
  });
});
