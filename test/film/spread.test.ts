import { expect, it } from 'vitest';
import {
  paintMass,
  paintVolume,
  spreadingRate,
  wetFilm,
  wetFilmFromSpread,
} from '../../language/src/film/spread.ts';

const SQUARE_FOOT = 0.09290304;
const US_GALLON = 3.785411784;

it('65 % solids at 125 µm dry cover 5.2 m² a litre (published coverage sheet)', () => {
  expect(spreadingRate(wetFilm(125, 0.65))).toBeCloseTo(5.2, 2);
});
it('100 µm dry at 62 % solids are 161 µm wet (published note on wet and dry films)', () => {
  expect(Math.abs(wetFilm(100, 0.62) - 161)).toBeLessThan(1);
});
it('10 m² a litre are 100 µm wet (published note on spread)', () => {
  expect(wetFilmFromSpread(10)).toBeCloseTo(100, 6);
});
it('900 square feet a US gallon are 22.09 m² a litre and 45.3 µm wet (Gardner 1911)', () => {
  const rate = (900 * SQUARE_FOOT) / US_GALLON;
  expect(rate).toBeCloseTo(22.09, 1);
  expect(wetFilmFromSpread(rate)).toBeCloseTo(45.3, 1);
});
it('a plate of 6 square feet takes 36 g of a paint of 5400 g a gallon at that spread (Gardner 1911: 900:6::5400:x)', () => {
  const wet = wetFilmFromSpread((900 * SQUARE_FOOT) / US_GALLON);
  const litres = paintVolume(6 * SQUARE_FOOT, wet);
  expect(paintMass(litres, 5400 / US_GALLON / 1000)).toBeCloseTo(36, 2);
});
