/**
 * Light through paint films by discrete ordinates: three cones of directions and the straight beam. Two cones are so
 * slanting that the face turns them wholly back, one can leave; the beam is the light that came in and has met nothing
 * yet. Inside each cone one direction stands for all (Gauss–Legendre in the cosine, split at the critical angle).
 *
 * A film is known by two numbers a band: `a` = absorption × thickness and `s` = (reduced, isotropic) scattering ×
 * thickness. Its reflection and transmission are exact for these streams (the matrix form of the two-stream solution;
 * Chandrasekhar, Radiative Transfer, 1950, for the ordinates; Liou, J. Atmos. Sci. 31 (1974) 1473, for closed forms, from memory).
 * With M = diag(μ), ω = s/(a + s), τ = a + s and P = M⁻² − ω z zᵀ, z = √w/μ, in the basis where reflection is symmetric:
 *
 *     F = M^½ f(P) M^½,  f(λ) = √λ tanh(τ√λ/2)        A = (I + F)⁻¹
 *     H = M^-½ g(P) M^-½, g(λ) = tanh(τ√λ/2)/√λ       B = (I + H)⁻¹
 *     R = A − B,  T = A + B − I
 *
 * f and g of the 3 × 3 matrix follow from its eigenvalues by Newton's divided differences, which stay apart for every ω;
 * the beam's own column needs the divided difference of g between an eigenvalue and the beam's, so nothing breaks where
 * the two meet. No thin or thick, clear or white film is a case of its own.
 */
import { ENTERS, OIL_INDEX } from './surface.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

/** Cosine of the critical angle inside the paint. */
export const CRITICAL = Math.sqrt(1 - 1 / OIL_INDEX ** 2);
/** Two nodes of Gauss and Legendre on [0, μc], one on [μc, 1]; the share of a hemisphere's directions each stands for. */
export const MU = [
  (CRITICAL / 2) * (1 - 1 / Math.sqrt(3)),
  (CRITICAL / 2) * (1 + 1 / Math.sqrt(3)),
  (1 + CRITICAL) / 2,
] as const;
export const W = [CRITICAL / 2, CRITICAL / 2, 1 - CRITICAL] as const;
/** Cosine of the beam inside the paint. */
export const MU_BEAM = Math.sqrt(1 - (ENTERS / OIL_INDEX) ** 2);

/** Beyond this optical thickness a film is opaque whatever else; the bound keeps squares finite. */
export const MOST = 1e8;
const LEAST = 1e-300;

const Z = MU.map((mu, i) => Math.sqrt(W[i]!) / mu) as unknown as readonly [number, number, number];
const [M0, M1, M2] = MU;
const [Z0, Z1, Z2] = Z;
const [P0, P1, P2] = [1 / (M0 * M0), 1 / (M1 * M1), 1 / (M2 * M2)] as const;
const [H0, H1, H2] = [Math.sqrt(M0), Math.sqrt(M1), Math.sqrt(M2)] as const;
const BEAM_ROOT = 1 / MU_BEAM;
const BEAM_SQUARE = BEAM_ROOT * BEAM_ROOT;
const BEAM_SHARE = BEAM_ROOT / Math.SQRT2;
/** Π 1/μ²: the product of the eigenvalues where nothing scatters. */
const PRODUCT = P0 * P1 * P2;

/** tanh(τ√λ/2)/√λ, τ/2 at λ = 0. */
function g(lambda: number, tau: number): number {
  const y = (lambda * tau * tau) / 4;
  if (y < 1e-6) return (tau / 2) * (1 - y / 3);
  const root = Math.sqrt(lambda);
  return Math.tanh((tau * root) / 2) / root;
}

/** (g(λ) − g(λ₀))/(λ − λ₀) for the beam's λ₀, its slope where they meet. */
function beamDifference(lambda: number, tau: number, atLambda: number, atBeam: number): number {
  const apart = lambda - BEAM_SQUARE;
  if (Math.abs(apart) > 1e-5) return (atLambda - atBeam) / apart;
  const middle = (lambda + BEAM_SQUARE) / 2;
  const root = Math.sqrt(middle);
  const t = Math.tanh((tau * root) / 2);
  return ((tau / 2) * (1 - t * t) - t / root) / (2 * middle);
}

/** Numbers a band of a `Plate` holds. */
export const PLATE = 19;
/** A film by itself, band by band: R and T of the cones (upper triangles), of the beam into them, the beam's own passage. */
export type Plate = Float64Array;

/** Fills one band of a plate. `a` and `s` ≥ 0, no unit; what is not a number counts as 0. */
export function plateBand(a: number, s: number, film: Plate, to: number): void {
  let absorbs = !(a > 0) ? 0 : a;
  let scatters = !(s > 0) ? 0 : s;
  let tau = absorbs + scatters;
  if (!(tau > LEAST)) {
    film.fill(0, to, to + PLATE);
    film[to + 6] = film[to + 9] = film[to + 11] = film[to + 18] = 1;
    return;
  }
  if (tau > MOST) {
    const by = MOST / tau;
    absorbs = Number.isFinite(absorbs) ? absorbs * by : MOST;
    scatters = Number.isFinite(scatters) ? scatters * by : 0;
    tau = absorbs + scatters;
  }
  const albedo = scatters / tau;

  // P, and its eigenvalues: the roots of a cubic, all real and apart.
  const a00 = P0 - albedo * Z0 * Z0;
  const a11 = P1 - albedo * Z1 * Z1;
  const a22 = P2 - albedo * Z2 * Z2;
  const a01 = -albedo * Z0 * Z1;
  const a02 = -albedo * Z0 * Z2;
  const a12 = -albedo * Z1 * Z2;
  const third = (a00 + a11 + a22) / 3;
  const [d0, d1, d2] = [a00 - third, a11 - third, a22 - third];
  const spread = Math.sqrt((d0 * d0 + d1 * d1 + d2 * d2 + 2 * (a01 * a01 + a02 * a02 + a12 * a12)) / 6);
  const half =
    (d0 * (d1 * d2 - a12 * a12) - a01 * (a01 * d2 - a12 * a02) + a02 * (a01 * a12 - d1 * a02)) /
    (2 * spread * spread * spread);
  const angle = Math.acos(Math.min(1, Math.max(-1, half))) / 3;
  const l3 = third + 2 * spread * Math.cos(angle);
  const low = third + 2 * spread * Math.cos(angle + (2 * Math.PI) / 3);
  const l2 = 3 * third - l3 - low;
  // The smallest from the product, so that it stays right where it is tiny beside the others.
  const l1 = (PRODUCT * (absorbs / tau)) / (l2 * l3);

  // P² for the second step of Newton's form.
  const s00 = a00 * a00 + a01 * a01 + a02 * a02;
  const s11 = a01 * a01 + a11 * a11 + a12 * a12;
  const s22 = a02 * a02 + a12 * a12 + a22 * a22;
  const s01 = a00 * a01 + a01 * a11 + a02 * a12;
  const s02 = a00 * a02 + a01 * a12 + a02 * a22;
  const s12 = a01 * a02 + a11 * a12 + a12 * a22;

  const g1 = g(l1, tau);
  const g2 = g(l2, tau);
  const g3 = g(l3, tau);
  const g12 = (g2 - g1) / (l2 - l1);
  const gg = ((g3 - g2) / (l3 - l2) - g12) / (l3 - l1);
  const gc = g1 - g12 * l1 + gg * l1 * l2;
  const gl = g12 - gg * (l1 + l2);
  const f1 = l1 * g1;
  const f12 = (l2 * g2 - f1) / (l2 - l1);
  const ff = ((l3 * g3 - l2 * g2) / (l3 - l2) - f12) / (l3 - l1);
  const fc = f1 - f12 * l1 + ff * l1 * l2;
  const fl = f12 - ff * (l1 + l2);

  // A = (I + F)⁻¹
  let m00 = 1 + M0 * (fc + fl * a00 + ff * s00);
  let m11 = 1 + M1 * (fc + fl * a11 + ff * s11);
  let m22 = 1 + M2 * (fc + fl * a22 + ff * s22);
  let m01 = H0 * H1 * (fl * a01 + ff * s01);
  let m02 = H0 * H2 * (fl * a02 + ff * s02);
  let m12 = H1 * H2 * (fl * a12 + ff * s12);
  let c00 = m11 * m22 - m12 * m12;
  let c01 = m02 * m12 - m01 * m22;
  let c02 = m01 * m12 - m02 * m11;
  let over = 1 / (m00 * c00 + m01 * c01 + m02 * c02);
  const A00 = c00 * over;
  const A01 = c01 * over;
  const A02 = c02 * over;
  const A11 = (m00 * m22 - m02 * m02) * over;
  const A12 = (m01 * m02 - m00 * m12) * over;
  const A22 = (m00 * m11 - m01 * m01) * over;

  // B = (I + H)⁻¹
  m00 = 1 + (gc + gl * a00 + gg * s00) / M0;
  m11 = 1 + (gc + gl * a11 + gg * s11) / M1;
  m22 = 1 + (gc + gl * a22 + gg * s22) / M2;
  m01 = (gl * a01 + gg * s01) / (H0 * H1);
  m02 = (gl * a02 + gg * s02) / (H0 * H2);
  m12 = (gl * a12 + gg * s12) / (H1 * H2);
  c00 = m11 * m22 - m12 * m12;
  c01 = m02 * m12 - m01 * m22;
  c02 = m01 * m12 - m02 * m11;
  over = 1 / (m00 * c00 + m01 * c01 + m02 * c02);
  const B00 = c00 * over;
  const B01 = c01 * over;
  const B02 = c02 * over;
  const B11 = (m00 * m22 - m02 * m02) * over;
  const B12 = (m01 * m02 - m00 * m12) * over;
  const B22 = (m00 * m11 - m01 * m01) * over;

  film[to] = A00 - B00;
  film[to + 1] = A01 - B01;
  film[to + 2] = A02 - B02;
  film[to + 3] = A11 - B11;
  film[to + 4] = A12 - B12;
  film[to + 5] = A22 - B22;
  film[to + 6] = A00 + B00 - 1;
  film[to + 7] = A01 + B01;
  film[to + 8] = A02 + B02;
  film[to + 9] = A11 + B11 - 1;
  film[to + 10] = A12 + B12;
  film[to + 11] = A22 + B22 - 1;

  // The beam: the same functions' divided differences against its own λ₀, on z.
  const g0 = g(BEAM_SQUARE, tau);
  const b1 = beamDifference(l1, tau, g1, g0);
  const b2 = beamDifference(l2, tau, g2, g0);
  const b3 = beamDifference(l3, tau, g3, g0);
  const b12 = (b2 - b1) / (l2 - l1);
  const bb = ((b3 - b2) / (l3 - l2) - b12) / (l3 - l1);
  const bc = b1 - b12 * l1 + bb * l1 * l2;
  const bl = b12 - bb * (l1 + l2);
  const v0 = (bc + bl * a00 + bb * s00) * Z0 + (bl * a01 + bb * s01) * Z1 + (bl * a02 + bb * s02) * Z2;
  const v1 = (bl * a01 + bb * s01) * Z0 + (bc + bl * a11 + bb * s11) * Z1 + (bl * a12 + bb * s12) * Z2;
  const v2 = (bl * a02 + bb * s02) * Z0 + (bl * a12 + bb * s12) * Z1 + (bc + bl * a22 + bb * s22) * Z2;
  const t0 = g0 * BEAM_ROOT;
  const scale = (albedo * BEAM_SHARE) / (1 + t0);
  const x0 = H0 * (a00 * v0 + a01 * v1 + a02 * v2 + g0 * Z0) * scale;
  const x1 = H1 * (a01 * v0 + a11 * v1 + a12 * v2 + g0 * Z1) * scale;
  const x2 = H2 * (a02 * v0 + a12 * v1 + a22 * v2 + g0 * Z2) * scale;
  const y0 = (v0 / H0) * BEAM_ROOT * scale;
  const y1 = (v1 / H1) * BEAM_ROOT * scale;
  const y2 = (v2 / H2) * BEAM_ROOT * scale;
  const u0 = A00 * x0 + A01 * x1 + A02 * x2;
  const u1 = A01 * x0 + A11 * x1 + A12 * x2;
  const u2 = A02 * x0 + A12 * x1 + A22 * x2;
  const w0 = B00 * y0 + B01 * y1 + B02 * y2;
  const w1 = B01 * y0 + B11 * y1 + B12 * y2;
  const w2 = B02 * y0 + B12 * y1 + B22 * y2;
  film[to + 12] = u0 - w0;
  film[to + 13] = u1 - w1;
  film[to + 14] = u2 - w2;
  film[to + 15] = u0 + w0;
  film[to + 16] = u1 + w1;
  film[to + 17] = u2 + w2;
  film[to + 18] = (1 - t0) / (1 + t0);
}

/** A film of absorption × thickness `a` and scattering × thickness `s` (no unit, ≥ 0) by itself. */
export function plate(a: Spectrum, s: Spectrum, out: Plate = new Float64Array(PLATE * BANDS)): Plate {
  for (let b = 0; b < BANDS; b++) plateBand(a[b]!, s[b]!, out, PLATE * b);
  return out;
}
