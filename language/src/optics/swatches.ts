/**
 * A painter's own swatches to absorption and scattering. Each colour becomes a reflectance: the smoothest change, to that colour, of what
 * the pigment's class data predict for the swatch (the smoothest of all where there are none). The coefficients then
 * follow band by band: masstone and tint tell their ratio twice, a film over black and over white tells both, and what
 * the swatches leave open stays with the class data. All at once, as weighted least squares on their logarithms: the class data pull as hard as their class deserves, and nothing can come
 * out negative or endless.
 */
import { type Lab, labRoot, toLab, toXyz } from './cie.ts';
import type { Confidence, OpticalData } from './data.ts';
import { deltaE00 } from './difference.ts';
import type { Coefficients } from './film.ts';
import { fromLab, smoothSpectrum } from './spectrum.ts';
import { GLOSS, MATT, type Surface } from './surface.ts';
import { endless, filmOverGround } from './transport.ts';
import { BANDS, type Spectrum } from './wavelengths.ts';

/** Paint or film: pigments with volume over the dry volume. */
export interface WhitePaint {
  readonly optical: Coefficients;
  readonly fraction: number;
}

/** `reflectance`: in air, where it was measured; else the smoothest curve of that colour is taken. */
export type SwatchColour = { readonly reflectance?: Spectrum } & (
  | { readonly kind: 'masstone'; readonly lab: Lab }
  /** one part of the paint in `parts` parts of white, by volume, opaque */
  | { readonly kind: 'tint'; readonly lab: Lab; readonly parts: number; readonly white: WhitePaint }
  /** µm, dry */
  | { readonly kind: 'over-black' | 'over-white'; readonly lab: Lab; readonly thickness: number }
);

/** What a painter’s swatches make of the data of a pigment. */
export interface Calibration {
  /** absent where the swatches contradict each other and there are no class data to fall back on */
  readonly data?: OpticalData;
  /** ΔE00 of each swatch as predicted before and after */
  readonly swatches: readonly {
    readonly kind: SwatchColour['kind'];
    readonly before?: number;
    readonly after?: number;
  }[];
  /** why the swatches cannot all be right; `data` are then the class data, untouched */
  readonly inconsistent?: string;
}

/** Standard deviation of ln absorption and ln scattering by class: how far the class data may be moved by a swatch. */
const WIDTH: Readonly<Record<Confidence, number>> = { A: 0.2, B: 0.4, C: 0.6, D: 0.8 };
const NO_CLASS = { s: 0.2, width: 2 };
/** Standard deviation of a swatch's root of reflectance: about one unit of L*. */
const NOISE = 0.01;
/** Cards the films lie on, CIELAB D65/2° (assumption: common contrast cards). */
const CARDS = { 'over-black': [8, 0, 0], 'over-white': [94, 0, 3] } as const;
/** ΔE00 that may stay between a swatch and what fits all of them best, before they count as contradicting each other. */
const TOLERATED = 5;

/**
 * Calibrates a pigment. `prior`: the class data of the pigment it is like. `fraction`: pigment volume over the dry
 * volume of the paint the swatches were made with. `seen`: how the swatches were looked at, where that is known; else
 * with or without the mirrored light, whichever brings the class data nearer to them, and without it where there are none.
 */
export function calibrate(
  prior: OpticalData | undefined,
  fraction: number,
  swatches: readonly SwatchColour[],
  seen?: Surface,
): Calibration {
  const used = swatches.filter((s) => s.lab.every(Number.isFinite) && fraction > 0);
  if (used.length === 0) return { data: prior, swatches: [] };
  const offAs = (c: Coefficients, s: SwatchColour, as: Surface): number =>
    deltaE00(s.lab, toLab(toXyz(predicted(c, fraction, s, as))));
  const away = (as: Surface): number => (prior ? used.reduce((sum, s) => sum + offAs(prior, s, as), 0) : 0);
  const face = seen ?? (away(MATT) < away(GLOSS) ? MATT : GLOSS);
  const start: Coefficients = prior ?? blank(used, face);
  const difference = (c: Coefficients, s: SwatchColour): number => offAs(c, s, face);
  const before = used.map((s) => (prior ? difference(prior, s) : undefined));
  const refuse = (why: string): Calibration => ({
    data: prior,
    swatches: used.map((s, i) => ({ kind: s.kind, before: before[i] })),
    inconsistent: why,
  });
  const contradiction = contradicts(used);
  if (contradiction) return refuse(contradiction);

  const wanted = used.map(
    (s) =>
      s.reflectance ?? smoothSpectrum(s.lab, prior ? predicted(prior, fraction, s, face) : undefined).seen,
  );
  const width = prior ? WIDTH[prior.confidence] : NO_CLASS.width;
  const a = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  for (let b = 0; b < BANDS; b++) {
    const looks = used.map((swatch, i) => ({
      seen: labRoot(wanted[i]![b]!),
      look: bandOf(swatch, fraction, face, b),
    }));
    [a[b], s[b]] = fitBand(start.a[b]!, start.s[b]!, width, looks);
  }
  const fitted = { a, s };
  const after = used.map((swatch) => difference(fitted, swatch));
  const worst = after.indexOf(Math.max(...after));
  if (after[worst]! > TOLERATED)
    return refuse(
      `The swatches cannot all be right: the nearest pigment still leaves the ${used[worst]!.kind} off by ΔE00 ${after[worst]!.toFixed(1)}. Check what was mixed and how thick the films are.`,
    );
  const rms = Math.sqrt(after.reduce((sum, v) => sum + v * v, 0) / after.length);
  const full = used.length > 1;
  return {
    data: {
      ...fitted,
      confidence: full ? (prior?.confidence === 'A' ? 'A' : 'B') : (prior?.confidence ?? 'D'),
      residual: full ? Math.max(1.5, rms) : Math.max(2, rms, (prior?.residual ?? 8) * 0.7),
      basis: `The painter's own swatches (${used.map((u) => u.kind).join(', ')})${prior ? `, blended with: ${prior.basis}` : '.'}`,
    },
    swatches: used.map((swatch, i) => ({ kind: swatch.kind, before: before[i], after: after[i]! })),
  };
}

/** Faults that need no fitting to be seen. */
function contradicts(swatches: readonly SwatchColour[]): string | undefined {
  const masstone = swatches.find((s) => s.kind === 'masstone');
  for (const s of swatches)
    if (s.kind === 'tint' && masstone && s.lab[0] < masstone.lab[0] - 1)
      return `The tint (L* ${s.lab[0].toFixed(0)}) is darker than the masstone (L* ${masstone.lab[0].toFixed(0)}); white can only lighten it. Were they swapped?`;
  const black = swatches.find((s) => s.kind === 'over-black');
  const white = swatches.find((s) => s.kind === 'over-white');
  if (
    black?.kind === 'over-black' &&
    white?.kind === 'over-white' &&
    black.lab[0] > white.lab[0] + 1 &&
    black.thickness >= white.thickness * 0.8
  )
    return `Over black it is lighter (L* ${black.lab[0].toFixed(0)}) than over white (L* ${white.lab[0].toFixed(0)}). Were they swapped?`;
  return undefined;
}

/** Reflectance in air, at one band, of a swatch made of a pigment with the given absorption and scattering. */
type Look = (a: number, s: number) => number;

function bandOf(swatch: SwatchColour, fraction: number, face: Surface, b: number): Look {
  const mirrored = face.specular ? face.k1 : 0;
  switch (swatch.kind) {
    case 'masstone':
      return (a, s) => mirrored + endless(a, s);
    case 'tint': {
      const { white, parts } = swatch;
      const share = Math.max(0, parts) * white.fraction;
      return (a, s) =>
        mirrored +
        endless(fraction * a + share * white.optical.a[b]!, fraction * s + share * white.optical.s[b]!);
    }
    default: {
      const ground = card(swatch.kind, face)[b]!;
      const x = fraction * Math.max(0, swatch.thickness);
      return (a, s) => mirrored + filmOverGround(a * x, s * x, ground);
    }
  }
}

const cards = new Map<string, Spectrum>();
function card(kind: 'over-black' | 'over-white', face: Surface): Spectrum {
  const key = `${kind} ${face.k1} ${face.specular}`;
  let internal = cards.get(key);
  if (!internal) {
    // The card's colour is that of the bare card, seen as such cards are measured, gloss left out.
    internal = fromLab(CARDS[kind], { ...face, specular: false });
    cards.set(key, internal);
  }
  return internal;
}

const predicted = (c: Coefficients, fraction: number, swatch: SwatchColour, face: Surface): Spectrum =>
  Float64Array.from({ length: BANDS }, (_, b) => bandOf(swatch, fraction, face, b)(c.a[b]!, c.s[b]!));

/** Without class data: a middling scatterer that absorbs as the darkest swatch asks. */
function blank(swatches: readonly SwatchColour[], face: Surface): Coefficients {
  const darkest = swatches.reduce((a, b) => (b.lab[0] < a.lab[0] ? b : a));
  const internal = fromLab(darkest.lab, face);
  return {
    s: new Float64Array(BANDS).fill(NO_CLASS.s),
    // The ratio of an endless film, as Kubelka and Munk have it, over 3.5: near enough to begin with.
    a: internal.map(
      (r) =>
        (NO_CLASS.s / 3.5) * Math.min(50, (1 - Math.max(0.005, r)) ** 2 / (2 * Math.max(0.005, r)) + 1e-4),
    ),
  };
}

/** Two unknowns, damped Gauss–Newton with differences for slopes. */
function fitBand(
  a0: number,
  s0: number,
  width: number,
  looks: readonly { seen: number; look: Look }[],
): [number, number] {
  const home = [Math.log(Math.max(1e-6, a0)), Math.log(Math.max(1e-6, s0))] as const;
  const cost = (u: number, v: number): number =>
    ((u - home[0]) / width) ** 2 +
    ((v - home[1]) / width) ** 2 +
    looks.reduce(
      (sum, { seen, look }) => sum + ((labRoot(look(Math.exp(u), Math.exp(v))) - seen) / NOISE) ** 2,
      0,
    );
  let [u, v] = home as readonly [number, number] as [number, number];
  let best = cost(u, v);
  let damping = 1e-2;
  for (let round = 0; round < 40; round++) {
    let [a, c, d] = [1 / width ** 2, 1 / width ** 2, 0];
    let [p, q] = [(home[0] - u) / width ** 2, (home[1] - v) / width ** 2];
    const h = 1e-4;
    for (const { seen, look } of looks) {
      const at = (x: number, y: number) => labRoot(look(Math.exp(x), Math.exp(y)));
      const du = (at(u + h, v) - at(u - h, v)) / (2 * h) / NOISE;
      const dv = (at(u, v + h) - at(u, v - h)) / (2 * h) / NOISE;
      const miss = (seen - at(u, v)) / NOISE;
      a += du * du;
      c += dv * dv;
      d += du * dv;
      p += du * miss;
      q += dv * miss;
    }
    const [aa, cc] = [a * (1 + damping), c * (1 + damping)];
    const determinant = aa * cc - d * d;
    const step = [(cc * p - d * q) / determinant, (aa * q - d * p) / determinant] as const;
    const limit = Math.min(1, 1 / Math.max(Math.abs(step[0]), Math.abs(step[1]), 1e-12));
    const [nu, nv] = [u + limit * step[0], v + limit * step[1]];
    const there = cost(nu, nv);
    if (there < best) {
      const fall = best - there;
      [u, v, best] = [nu, nv, there];
      damping = Math.max(1e-8, damping / 6);
      if (fall < 1e-9) break;
    } else {
      damping *= 8;
      if (damping > 1e9) break;
    }
  }
  return [Math.exp(u), Math.exp(v)];
}
