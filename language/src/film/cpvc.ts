/**
 * Critical pigment volume concentration: the share of pigment at which the oil just fills the gaps between its grains.
 * Asbeck & Van Loo, Ind. Eng. Chem. 41 (1949) 1470; oil absorption by rub-out, ASTM D281.
 */

/** g/cm³ of the linseed oil in which oil absorptions are measured, as the printed formula has it. */
export const RUB_OUT_OIL_DENSITY = 0.935;

/** cm³ of binder that fill the gaps of 1 g of pigment whose oil absorption is given in g per 100 g. */
export const absorbedVolume = (oilAbsorption: number): number => oilAbsorption / (100 * RUB_OUT_OIL_DENSITY);

/** CPVC of one pigment, as a fraction: oil absorption in g per 100 g, density in g/cm³. */
export const cpvc = (oilAbsorption: number, density: number): number =>
  1 / (1 + absorbedVolume(oilAbsorption) * density);

/**
 * CPVC of a mixture from its mass-averaged oil absorption, as a fraction. A first guess: grains of different sizes pack
 * closer, so the true value lies somewhat higher. Without pigment there is nothing to fill and the answer is 1.
 */
export function cpvcOfMixture(
  pigments: readonly { readonly mass: number; readonly density: number; readonly oilAbsorption: number }[],
): number {
  let volume = 0;
  let absorbed = 0;
  for (const p of pigments) {
    volume += p.mass / p.density;
    absorbed += p.mass * absorbedVolume(p.oilAbsorption);
  }
  return volume > 0 ? volume / (volume + absorbed) : 1;
}
