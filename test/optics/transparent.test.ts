/**
 * What holds of every pigment whose class in the catalogue is *transparent*, whatever its data rest on.
 *
 * How much such a pigment can scatter follows from its refractive index. Light scattered by small grains goes as
 * ((m² − 1)/(m² + 2))² with m = n/1.5, the index over the oil's (Lorenz and Lorentz; van de Hulst, Light Scattering by
 * Small Particles, 1957). Lead white (n about 2.0) scatters about 0.8 per µm of pure pigment (hiding powers; the measured
 * oil films). At n = 1.67, that of lakes and most organic pigments away from their bands (Gettens & Stout 1942 for
 * alizarin 1.66 to 1.70), the factor is 0.0055/0.042 of it: 0.10 per µm. The measured oil films of transparent pigments
 * agree: cochineal lake 0.08, viridian up to 0.10, barytes 0.03. Grains of higher index (oxide needles) are called
 * transparent because they are far smaller than the light is long and scatter no more than that; the siennas, natural
 * earths of coarse grains (n about 2) in clear clay, are allowed twice as much.
 */
import { describe, expect, test } from 'vitest';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import { groundOf } from '../../language/src/optics/spectrum.ts';
import { layOn } from '../../language/src/optics/stack.ts';
import { GLOSS } from '../../language/src/optics/surface.ts';
import { flat } from '../../language/src/optics/wavelengths.ts';
import { BLACK, chroma, film, hue, lab, THICK, thinned, tube, WHITE } from './paints.ts';

const TRANSPARENT = allPigments().filter((p) => p.transparency.value === 'transparent');
/** Chalk, barytes, clay and the like: white as powder, all but nothing in oil. */
const CLEAR = TRANSPARENT.filter((p) => p.code?.startsWith('PW')).map((p) => p.id);
const COLOURED = TRANSPARENT.map((p) => p.id).filter((id) => !CLEAR.includes(id));

const indexBound = (id: string): number => (id.startsWith('PBr7') ? 0.2 : 0.1);
/** Of one part of paint in ten, 3 µm a coat, over a middle grey. */
const GROUND_LIGHTNESS = 64;
const grey = groundOf([GROUND_LIGHTNESS, 0, 0], GLOSS);
const after = (id: string, coats: number): number => lab(film(thinned(id, 0.1), 3 * coats, grey))[0];
const overBlack = (id: string): number => lab(film(thinned(id), 25, BLACK))[0];
const masstone = (id: string): number => lab(film(thinned(id), THICK, BLACK))[0];

/** Yellow and orange as a glaze on white: they pass most of what the eye sees. */
const yellow = (id: string): boolean => {
  const seen = lab(film(thinned(id, 0.1), 10, WHITE));
  return chroma(seen) > 12 && hue(seen) > 50 && hue(seen) < 115;
};

/** Earths so weak that a glaze on white hardly darkens it: they have little to hide their own scattering with. */
const pale = (id: string): boolean => lab(film(thinned(id, 0.1), 10, WHITE))[0] > 88;

test('the catalogue has over fifty of them', () => {
  expect(TRANSPARENT.length).toBeGreaterThan(50);
  expect(CLEAR.length).toBeGreaterThan(5);
});

describe('25 µm of tube paint over black', () => {
  test.each(TRANSPARENT.map((p) => [p.id]))('%s is no lighter than its index lets it be', (id) => {
    const { a } = opticalData(id)!;
    const most = { optical: { a, s: flat(indexBound(id)) }, fraction: tube(id) };
    expect(overBlack(id)).toBeLessThanOrEqual(
      lab(layOn({ pigments: [most], thickness: 25 }, BLACK))[0] + 0.01,
    );
  });
  // 25 µm of tube paint hold 6 to 12 µm of pigment: at 0.1 per µm and the middle of the pastes an optical thickness of
  // 0.8, which sends back 15 % where nothing is absorbed: L* 45. Other hues absorb two thirds of
  // what the eye sees, unless they are pale.
  test.each(TRANSPARENT.map((p) => [p.id]))('%s stays dark', (id) => {
    expect(overBlack(id)).toBeLessThanOrEqual(CLEAR.includes(id) || yellow(id) || pale(id) ? 45 : 25);
  });
});

describe('coats of 3 µm with nine tenths of medium over L* 64', () => {
  test.each(COLOURED.map((id) => [id]))('%s: more coats never lighten', (id) => {
    for (let n = 0; n < 40; n++) expect(after(id, n + 1), `coat ${n + 1}`).toBeLessThan(after(id, n) + 1e-6);
  });
  test.each(COLOURED.map((id) => [id]))('%s goes on darkening towards its masstone', (id) => {
    // The second ten coats still take a fiftieth of what lies between the ground and the masstone, if there is any left.
    const end = masstone(id);
    const [ten, twenty] = [after(id, 10), after(id, 20)];
    if (twenty - end > 3) expect(ten - twenty).toBeGreaterThan((GROUND_LIGHTNESS - end) / 50);
    // However many coats, it ends darker than it began, and not bright.
    expect(end).toBeLessThan(yellow(id) ? GROUND_LIGHTNESS - 2 : 35);
  });
  // The strongest organic pigments absorb 10 to 15 per µm at their peak, up to 7 as the eye weighs it (a crystal of
  // extinction coefficient 0.3: 4π 0.3/0.55 µm). A coat holds 3 µm × 0.1 × 0.2 to 0.25 = 0.06 to 0.075 µm of pigment:
  // at most an optical thickness of 0.52 as the eye weighs it, which as a grey takes L* 64 to 33, as a colour less far.
  test.each(COLOURED.map((id) => [id]))('%s: one coat is seen, and is still a thin glaze', (id) => {
    expect(GROUND_LIGHTNESS - after(id, 1)).toBeGreaterThan(0.2);
    expect(GROUND_LIGHTNESS - after(id, 1)).toBeLessThan(32);
  });
  test.each(CLEAR.map((id) => [id]))('%s: twenty coats are hardly seen', (id) => {
    for (let n = 1; n <= 20; n++) expect(Math.abs(after(id, n) - GROUND_LIGHTNESS)).toBeLessThan(2);
  });
});
