/**
 * A reflectance for a colour of which only CIELAB is known. Endless spectra share a colour; paint's are smooth, so the
 * smoothest is taken: the tanh-bounded curve of least squared slope that has exactly the wanted XYZ under D65. Written
 * as R = (1 + tanh u)/2 the curve stays inside (0, 1) by itself; Newton's method on the Lagrange conditions finds u.
 * (Least-slope spectra as metamers of a colour: Burns, Color Res. Appl. 45 (2020) 33, for the idea, from memory.)
 */
import { fromLabToXyz, type Lab, lightOf, toLab, toXyz } from './cie.ts';
import { deltaE00 } from './difference.ts';
import { solve } from './linear.ts';
import { inwardInto, type Surface } from './surface.ts';
import { lambert, type Stack } from './transport.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

const SIZE = BANDS + 3;
const EDGE = 4; // tanh(4) leaves 0.03 % to black and to white

export interface SmoothSpectrum {
  /** reflectance seen in air, strictly inside (0, 1) */
  readonly seen: Spectrum;
  /** ΔE00 between the wanted colour and the spectrum's; 0 unless no surface can show the wanted one */
  readonly off: number;
}

/**
 * The smoothest reflectance of the given CIELAB D65/2°. A colour no surface can show gets the nearest found. With
 * `like`, a reflectance in air, the smoothest change of that one: its bands and edges stay where they are.
 */
export function smoothSpectrum(lab: Lab, like?: Spectrum): SmoothSpectrum {
  const wanted: Lab = [Math.min(100, Math.max(0, lab[0])), lab[1], lab[2]];
  const whole = (like && attempt(wanted, like)) ?? attempt(wanted);
  if (whole) return { seen: whole, off: deltaE00(lab, toLab(toXyz(whole))) };
  // Outside the solid of surface colours: pull towards the grey of equal lightness until a spectrum exists.
  let [out, within] = [1, 0];
  let best = attempt([Math.min(99.7, Math.max(0.3, wanted[0])), 0, 0]) ?? new Float64Array(BANDS).fill(0.5);
  for (let i = 0; i < 12; i++) {
    const t = (out + within) / 2;
    const spectrum = attempt([Math.min(99.7, Math.max(0.3, wanted[0])), wanted[1] * t, wanted[2] * t]);
    if (spectrum) {
      best = spectrum;
      within = t;
    } else out = t;
  }
  return { seen: best, off: deltaE00(lab, toLab(toXyz(best))) };
}

function attempt(lab: Lab, like?: Spectrum): Spectrum | undefined {
  const target = fromLabToXyz(lab);
  if (!target.every((v) => v >= 0)) return undefined;
  const w = lightOf('D65');
  const bars = [w.x, w.y, w.z];
  const grey = Math.min(0.995, Math.max(0.003, target[1]));
  const shape = new Float64Array(BANDS);
  if (like)
    for (let i = 0; i < BANDS; i++) shape[i] = Math.atanh(2 * Math.min(0.997, Math.max(0.003, like[i]!)) - 1);
  const u = like ? Float64Array.from(shape) : new Float64Array(BANDS).fill(Math.atanh(2 * grey - 1));
  const multipliers = [0, 0, 0];
  const r = new Float64Array(BANDS);
  for (let round = 0; round < 40; round++) {
    const matrix = new Float64Array(SIZE * SIZE);
    const right = new Float64Array(SIZE);
    for (let i = 0; i < BANDS; i++) {
      const t = Math.tanh(u[i]!);
      r[i] = (1 + t) / 2;
      const slope = (1 - t * t) / 2;
      const curve = -t * (1 - t * t);
      // Gradient and Hessian of the summed squared steps between neighbours.
      let gradient = 0;
      let diagonal = 0;
      for (const n of [i - 1, i + 1]) {
        if (n < 0 || n >= BANDS) continue;
        gradient += 2 * (u[i]! - shape[i]! - u[n]! + shape[n]!);
        diagonal += 2;
        matrix[i * SIZE + n] = -2;
      }
      for (let c = 0; c < 3; c++) {
        const pull = bars[c]![i]!;
        gradient += multipliers[c]! * pull * slope;
        diagonal += multipliers[c]! * pull * curve;
        matrix[i * SIZE + BANDS + c] = pull * slope;
        matrix[(BANDS + c) * SIZE + i] = pull * slope;
        right[BANDS + c]! -= pull * r[i]!;
      }
      matrix[i * SIZE + i] = diagonal;
      right[i] = -gradient;
    }
    let miss = 0;
    for (let c = 0; c < 3; c++) {
      right[BANDS + c]! += target[c]!;
      miss = Math.max(miss, Math.abs(right[BANDS + c]!));
    }
    const step = solve(matrix, right);
    if (!step) return undefined;
    let largest = 0;
    for (let i = 0; i < BANDS; i++) largest = Math.max(largest, Math.abs(step[i]!));
    if (!Number.isFinite(largest)) return undefined;
    const damp = largest > 1 ? 1 / largest : 1;
    for (let i = 0; i < BANDS; i++) u[i] = Math.min(EDGE, Math.max(-EDGE, u[i]! + damp * step[i]!));
    for (let c = 0; c < 3; c++) multipliers[c]! += damp * step[BANDS + c]!;
    if (miss < 1e-9 && largest < 1e-6) break;
  }
  for (let i = 0; i < BANDS; i++) r[i] = (1 + Math.tanh(u[i]!)) / 2;
  return deltaE00(lab, toLab(toXyz(r))) < 0.01 ? r : undefined;
}

/** Internal reflectance of an opaque surface of a known colour, seen through `face`. */
export function fromLab(lab: Lab, face: Surface): Spectrum {
  const internal = new Float64Array(BANDS);
  inwardInto(internal, smoothSpectrum(lab).seen, face);
  return internal;
}

/** An opaque surface of a known colour, to lay films on. */
export const groundOf = (lab: Lab, face: Surface): Stack => lambert(fromLab(lab, face));
