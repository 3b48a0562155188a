/**
 * Reflectance to colour: CIE XYZ (1931 standard observer, 2°) under D65, D50 or A, and CIELAB (ISO/CIE 11664-4).
 *
 * The CIE's tables go by 5 nm from 360 to 780 nm, our spectra by 10 nm from 400 to 700. The sum is taken over the fine
 * table, with the spectrum read between its bands by cubic (at the ends quadratic) Lagrange interpolation, as ASTM E308
 * and E2022 do, and held at its end values outside 400–700 nm. This folds into one weight a band, computed once. A
 * reflectance of 1 in every band therefore gives exactly the white of the whole table, Y = 1.
 */
import { d50, d65, a as incandescent } from './tables/illuminants.ts';
import { xBar, yBar, zBar } from './tables/observer.ts';
import { BANDS, FIRST, LAST, type Spectrum, STEP } from './wavelengths.ts';

export type Light = 'D65' | 'D50' | 'A';
/** CIELAB: L* 0 to 100, a*, b*. */
export type Lab = readonly [number, number, number];
/** CIE XYZ, Y = 1 for a perfect white. */
export type Xyz = readonly [number, number, number];

const TABLE_FIRST = 360;
const TABLE_STEP = 5;

/** Shares with which the bands around `nm` give the spectrum's value there. */
function shares(nm: number): readonly [band: number, share: number][] {
  if (nm <= FIRST) return [[0, 1]];
  if (nm >= LAST) return [[BANDS - 1, 1]];
  const at = (nm - FIRST) / STEP;
  const below = Math.floor(at);
  const nodes = [below - 1, below, below + 1, below + 2].filter((n) => n >= 0 && n < BANDS);
  return nodes.map((n) => [n, nodes.reduce((l, m) => (m === n ? l : (l * (at - m)) / (n - m)), 1)]);
}

function weights(power: readonly number[], bar: readonly number[]): Float64Array {
  const out = new Float64Array(BANDS);
  const whole = power.reduce((sum, p, i) => sum + p * yBar[i]!, 0);
  power.forEach((p, i) => {
    for (const [band, share] of shares(TABLE_FIRST + TABLE_STEP * i))
      out[band]! += (share * p * bar[i]!) / whole;
  });
  return out;
}

interface Weights {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly white: Xyz;
}

const sum = (values: Float64Array): number => values.reduce((s, v) => s + v, 0);

function lightWeights(power: readonly number[]): Weights {
  const [x, y, z] = [weights(power, xBar), weights(power, yBar), weights(power, zBar)];
  return { x, y, z, white: [sum(x), sum(y), sum(z)] };
}

const LIGHTS: Readonly<Record<Light, Weights>> = {
  D65: lightWeights(d65),
  D50: lightWeights(d50),
  A: lightWeights(incandescent),
};

/** Weight of each band in X, Y and Z, and the white they sum to (Y = 1). */
export const lightOf = (light: Light): Weights => LIGHTS[light];

/** XYZ of a reflectance seen in air. */
export function toXyz(seen: Spectrum, light: Light = 'D65'): Xyz {
  const w = LIGHTS[light];
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < BANDS; i++) {
    const r = seen[i]!;
    x += w.x[i]! * r;
    y += w.y[i]! * r;
    z += w.z[i]! * r;
  }
  return [x, y, z];
}

/** The cube root of CIELAB with its straight foot, (6/29)³ and (29/6)²/3 as the standard has them. */
export const labRoot = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (t * 24389) / 3132 + 4 / 29);
const labCube = (f: number): number => (f > 6 / 29 ? f ** 3 : (f - 4 / 29) * (3132 / 24389));

/** CIELAB of an XYZ, relative to the white of `light`. */
export function toLab(xyz: Xyz, light: Light = 'D65'): Lab {
  const { white } = LIGHTS[light];
  const fx = labRoot(xyz[0] / white[0]);
  const fy = labRoot(xyz[1] / white[1]);
  const fz = labRoot(xyz[2] / white[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** XYZ of a CIELAB relative to the white of `light`. */
export function fromLabToXyz(lab: Lab, light: Light = 'D65'): Xyz {
  const { white } = LIGHTS[light];
  const fy = (lab[0] + 16) / 116;
  return [
    labCube(fy + lab[1] / 500) * white[0],
    labCube(fy) * white[1],
    labCube(fy - lab[2] / 200) * white[2],
  ];
}
