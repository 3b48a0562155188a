/** Light, doses and years. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exactly } from '../../language/src/materials/interval.ts';
import { yearlyDose, yearsToDose, yearsToFade } from '../../language/src/permanence/fade.ts';

test('[BW3-years] blue wool 3, no UV, 150 lux for 3000 hours a year: 6.67 years (CIE 157:2004 dose, from memory)', () => {
  expect(yearlyDose(150, 3000)).toBeCloseTo(0.45, 12);
  expect(Math.abs(yearsToDose(3.0, 150, 3000)! - 6.67)).toBeLessThan(0.02);
});

test('no light, no years; a range of light turns the ends round', () => {
  expect(yearsToDose(3, 0, 3000)).toBeUndefined();
  expect(yearsToFade(exactly(3), { low: 0, likely: 50, high: 100 }, exactly(3000))).toBeUndefined();
  const range = yearsToFade(
    { low: 1, likely: 2, high: 4 },
    { low: 50, likely: 100, high: 200 },
    exactly(1000),
  )!;
  expect(range).toEqual({ low: 5, likely: 20, high: 80 });
});

test('any light whatever: finite years in order, or none', () => {
  const any = fc.double({ min: 0, noNaN: true });
  fc.assert(
    fc.property(any, any, any, (dose, lux, hours) => {
      const years = yearsToFade(exactly(dose), exactly(lux), exactly(hours));
      if (years)
        expect(Number.isFinite(years.high) && years.low <= years.likely && years.likely <= years.high).toBe(
          true,
        );
    }),
    { numRuns: 1000, seed: 6 },
  );
});
