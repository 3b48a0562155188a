/**
 * Films one on another and what leaves them at the top. What lies beneath a film is carried as a matrix, not as one
 * reflectance: which way the light comes back is what a clear film over it needs to know. The face is met once, on top.
 */
import { CRITICAL, MOST, MU, PLATE, type Plate, plateBand, W } from './plate.ts';
import { fresnel, GLOSS, type Surface } from './surface.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

/** Share of the light in the cone that can leave which the face turns back: its flux mean over the cone. */
const CONE_TURNED_BACK = (() => {
  // Substituting μ = μc + (1 − μc)v² takes the root at the critical angle out of the integrand; Simpson does the rest.
  const steps = 2000;
  const at = (v: number): [number, number] => {
    const mu = CRITICAL + (1 - CRITICAL) * v * v;
    return [fresnel(mu) * mu * v, mu * v];
  };
  let turned = 0;
  let all = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 ? 4 : 2;
    const [r, whole] = at(i / steps);
    turned += weight * r;
    all += weight * whole;
  }
  return turned / all;
})();

/** The three cones: cosine, share of diffuse light, and what of it the face turns back. */
export const CONES = MU.map((mu, i) => ({
  mu,
  share: 2 * mu * W[i]!,
  turned: i === 2 ? CONE_TURNED_BACK : 1,
}));

/** Numbers a band of a `Stack` holds: the upper triangle of a symmetric 3 × 3, then the beam's three. */
export const STREAMS = 9;
/**
 * How what lies beneath answers light from every direction: for each band the reflection matrix of the cones (11, 12,
 * 13, 22, 23, 33, scaled so that it is symmetric) and the reflection of the beam into the cones.
 */
export type Stack = Float64Array;

export const newStack = (): Stack => new Float64Array(STREAMS * BANDS);

/** √ of the share of diffuse light in each cone. */
const [L0, L1, L2] = MU.map((mu, i) => Math.sqrt(2 * mu * W[i]!)) as unknown as readonly [
  number,
  number,
  number,
];
/** A ground that scatters evenly: `internal` reflectance per band, 0 to 1, from inside the paint. */
export function lambert(internal: Spectrum, out: Stack = newStack()): Stack {
  for (let b = 0; b < BANDS; b++) lambertBand(internal[b]!, out, STREAMS * b);
  return out;
}

function lambertBand(internal: number, out: Stack, at: number): void {
  const r = internal > 0 ? Math.min(internal, 1) : 0;
  out[at] = r * L0 * L0;
  out[at + 1] = r * L0 * L1;
  out[at + 2] = r * L0 * L2;
  out[at + 3] = r * L1 * L1;
  out[at + 4] = r * L1 * L2;
  out[at + 5] = r * L2 * L2;
  out[at + 6] = r * L0;
  out[at + 7] = r * L1;
  out[at + 8] = r * L2;
}

/** What sends back `by` times as much in every band, or as much as it can. */
export function scaled(stack: Stack, by: number | Spectrum): Stack {
  const back = sentBack(stack);
  return stack.map((v, i) => {
    const b = Math.floor(i / STREAMS);
    const wanted = Math.max(0, typeof by === 'number' ? by : by[b]!);
    return v * (back[b]! > 0 ? Math.min(wanted, 1 / back[b]!) : wanted);
  });
}

/** Share of the beam that what a stack consists of sends back, band by band: the internal reflectance of an even ground. */
export function sentBack(stack: Stack, out: Spectrum = new Float64Array(BANDS)): Spectrum {
  for (let b = 0, at = 6; b < BANDS; b++, at += STREAMS)
    out[b] = L0 * stack[at]! + L1 * stack[at + 1]! + L2 * stack[at + 2]!;
  return out;
}

/** Lays a film on what lies `below`, into `out`, which may be `below` itself. */
export function lay(film: Plate, below: Stack, out: Stack = newStack()): Stack {
  for (let b = 0; b < BANDS; b++) layBand(film, PLATE * b, below, STREAMS * b, out);
  return out;
}

/** R + T Rb (I − R Rb)⁻¹ T: all orders of light going to and fro between the two. */
function layBand(film: Plate, from: number, below: Stack, at: number, out: Stack): void {
  const r00 = film[from]!;
  const r01 = film[from + 1]!;
  const r02 = film[from + 2]!;
  const r11 = film[from + 3]!;
  const r12 = film[from + 4]!;
  const r22 = film[from + 5]!;
  const t00 = film[from + 6]!;
  const t01 = film[from + 7]!;
  const t02 = film[from + 8]!;
  const t11 = film[from + 9]!;
  const t12 = film[from + 10]!;
  const t22 = film[from + 11]!;
  const q00 = below[at]!;
  const q01 = below[at + 1]!;
  const q02 = below[at + 2]!;
  const q11 = below[at + 3]!;
  const q12 = below[at + 4]!;
  const q22 = below[at + 5]!;
  const straight = film[from + 18]!;

  // N = I − Rb R, then its inverse G.
  const n00 = 1 - (q00 * r00 + q01 * r01 + q02 * r02);
  const n01 = -(q00 * r01 + q01 * r11 + q02 * r12);
  const n02 = -(q00 * r02 + q01 * r12 + q02 * r22);
  const n10 = -(q01 * r00 + q11 * r01 + q12 * r02);
  const n11 = 1 - (q01 * r01 + q11 * r11 + q12 * r12);
  const n12 = -(q01 * r02 + q11 * r12 + q12 * r22);
  const n20 = -(q02 * r00 + q12 * r01 + q22 * r02);
  const n21 = -(q02 * r01 + q12 * r11 + q22 * r12);
  const n22 = 1 - (q02 * r02 + q12 * r12 + q22 * r22);
  const c00 = n11 * n22 - n12 * n21;
  const c01 = n12 * n20 - n10 * n22;
  const c02 = n10 * n21 - n11 * n20;
  const over = 1 / (n00 * c00 + n01 * c01 + n02 * c02);
  const g00 = c00 * over;
  const g01 = (n02 * n21 - n01 * n22) * over;
  const g02 = (n01 * n12 - n02 * n11) * over;
  const g10 = c01 * over;
  const g11 = (n00 * n22 - n02 * n20) * over;
  const g12 = (n02 * n10 - n00 * n12) * over;
  const g20 = c02 * over;
  const g21 = (n01 * n20 - n00 * n21) * over;
  const g22 = (n00 * n11 - n01 * n10) * over;

  // W = G Rb is symmetric; then T W T.
  const w00 = g00 * q00 + g01 * q01 + g02 * q02;
  const w01 = g00 * q01 + g01 * q11 + g02 * q12;
  const w02 = g00 * q02 + g01 * q12 + g02 * q22;
  const w11 = g10 * q01 + g11 * q11 + g12 * q12;
  const w12 = g10 * q02 + g11 * q12 + g12 * q22;
  const w22 = g20 * q02 + g21 * q12 + g22 * q22;
  const h00 = w00 * t00 + w01 * t01 + w02 * t02;
  const h01 = w00 * t01 + w01 * t11 + w02 * t12;
  const h02 = w00 * t02 + w01 * t12 + w02 * t22;
  const h10 = w01 * t00 + w11 * t01 + w12 * t02;
  const h11 = w01 * t01 + w11 * t11 + w12 * t12;
  const h12 = w01 * t02 + w11 * t12 + w12 * t22;
  const h20 = w02 * t00 + w12 * t01 + w22 * t02;
  const h21 = w02 * t01 + w12 * t11 + w22 * t12;
  const h22 = w02 * t02 + w12 * t12 + w22 * t22;

  // The beam reaches what lies beneath scattered (t) and straight.
  const i0 = film[from + 15]!;
  const i1 = film[from + 16]!;
  const i2 = film[from + 17]!;
  const k0 = q00 * i0 + q01 * i1 + q02 * i2 + below[at + 6]! * straight;
  const k1 = q01 * i0 + q11 * i1 + q12 * i2 + below[at + 7]! * straight;
  const k2 = q02 * i0 + q12 * i1 + q22 * i2 + below[at + 8]! * straight;
  const u0 = g00 * k0 + g01 * k1 + g02 * k2;
  const u1 = g10 * k0 + g11 * k1 + g12 * k2;
  const u2 = g20 * k0 + g21 * k1 + g22 * k2;

  out[at] = r00 + t00 * h00 + t01 * h10 + t02 * h20;
  out[at + 1] = r01 + t00 * h01 + t01 * h11 + t02 * h21;
  out[at + 2] = r02 + t00 * h02 + t01 * h12 + t02 * h22;
  out[at + 3] = r11 + t01 * h01 + t11 * h11 + t12 * h21;
  out[at + 4] = r12 + t01 * h02 + t11 * h12 + t12 * h22;
  out[at + 5] = r22 + t02 * h02 + t12 * h12 + t22 * h22;
  out[at + 6] = film[from + 12]! + t00 * u0 + t01 * u1 + t02 * u2;
  out[at + 7] = film[from + 13]! + t01 * u0 + t11 * u1 + t12 * u2;
  out[at + 8] = film[from + 14]! + t02 * u0 + t12 * u1 + t22 * u2;
}

const C = CONE_TURNED_BACK;

/** Share of the light falling on the face at 8° that comes back out of the paint, mirrored light left out. */
function leavingBand(stack: Stack, at: number): number {
  // (I − Rb diag(1, 1, C)) v = beam
  const n00 = 1 - stack[at]!;
  const n01 = -stack[at + 1]!;
  const n10 = n01;
  const n02 = -C * stack[at + 2]!;
  const n20 = -stack[at + 2]!;
  const n11 = 1 - stack[at + 3]!;
  const n12 = -C * stack[at + 4]!;
  const n21 = -stack[at + 4]!;
  const n22 = 1 - C * stack[at + 5]!;
  const c02 = n10 * n21 - n11 * n20;
  const c12 = n01 * n20 - n00 * n21;
  const c22 = n00 * n11 - n01 * n10;
  const det = n02 * c02 + n12 * c12 + n22 * c22;
  // Only the cone that can leave is wanted: Cramer's rule for the last unknown.
  const v = (stack[at + 6]! * c02 + stack[at + 7]! * c12 + stack[at + 8]! * c22) / det;
  const out = (1 - GLOSS.k1) * (1 - C) * L2 * v;
  return out > 0 ? Math.min(out, 1 - GLOSS.k1) : 0;
}

/** What is seen of a stack, band by band, 0 to 1: the light that leaves and, where the face counts it, the mirrored. */
export function leaving(stack: Stack, face: Surface, out: Spectrum = new Float64Array(BANDS)): Spectrum {
  const mirrored = face.specular ? face.k1 : 0;
  // A face known to mirror less lets that much more in.
  const enters = (1 - face.k1) / (1 - GLOSS.k1);
  for (let b = 0; b < BANDS; b++) out[b] = mirrored + enters * leavingBand(stack, STREAMS * b);
  return out;
}

/** One film on band `b` of a stack: the light that leaves, mirrored light left out. */
export function filmOn(a: number, s: number, below: Stack, b: number): number {
  plateBand(a, s, one.film, 0);
  one.stack.set(below.subarray(STREAMS * b, STREAMS * (b + 1)));
  layBand(one.film, 0, one.stack, 0, one.stack);
  return leavingBand(one.stack, 0);
}

const one = { film: new Float64Array(PLATE), stack: new Float64Array(STREAMS) };
/** One film over an even ground of internal reflectance `ground`, 0 to 1: the light that leaves, mirrored light left out. */
export function filmOverGround(a: number, s: number, ground: number): number {
  lambertBand(ground, one.stack, 0);
  plateBand(a, s, one.film, 0);
  layBand(one.film, 0, one.stack, 0, one.stack);
  return leavingBand(one.stack, 0);
}

/** An endless film of absorption `a` and scattering `s` in any one unit: the light that leaves, mirrored light left out. */
export function endless(a: number, s: number): number {
  const most = Math.max(a, s);
  if (!(most > 0)) return 0;
  return filmOverGround((a / most) * MOST, (s / most) * MOST, 0);
}
