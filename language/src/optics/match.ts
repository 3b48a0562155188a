/**
 * Which paints in which proportions give a wanted colour, in a film of given thickness over a given underlayer. Every
 * set of up to `most` paints is solved, smaller sets first, larger ones starting from what their parts found; the sets
 * are then rounded to whole parts in order of what they promise, for as long as a later one can still be better. No
 * randomness: the same question has the same answer.
 */
import { type Lab, type Light, toLab, toXyz } from './cie.ts';
import { shown } from './css.ts';
import { deltaE00, deltaE00Of } from './difference.ts';
import { createMixer, type Medium, type Mixer, type Paint } from './match-film.ts';
import { type Limit, limitOf } from './match-limit.ts';
import { MOST_PARTS, polished, type Rounded, wholeParts } from './match-parts.ts';
import { createSolver, LEAST_LOG, metricAt, type Solver } from './match-solve.ts';
import { smoothSpectrum } from './spectrum.ts';
import { layOn, toColour } from './stack.ts';
import type { Surface } from './surface.ts';
import { leaving, type Stack } from './transport.ts';
import type { Spectrum } from './wavelengths.ts';

export type { Medium, Paint } from './match-film.ts';
export type { Limit } from './match-limit.ts';

export interface MatchRequest {
  /** CIELAB under `light` */
  readonly target: Lab;
  readonly paints: readonly Paint[];
  readonly medium?: Medium;
  /** µm, dry, all coats */
  readonly thickness: number;
  /** what lies beneath */
  readonly below: Stack;
  readonly face: Surface;
  readonly light?: Light;
  /** paints in one recipe at most; 4 unless said */
  readonly most?: number;
  /** ΔE00 that counts as reached; 2 unless said */
  readonly within?: number;
  /** how many recipes to return; 5 unless said */
  readonly recipes?: number;
}

/**
 * Whole parts by volume of paint, the colour they give (CIELAB, sRGB) and how far it is from the one wanted (ΔE00).
 */
export interface Recipe {
  readonly parts: readonly { readonly paint: string; readonly parts: number }[];
  readonly lab: Lab;
  readonly hex: string;
  /** sRGB cannot show it; `hex` is the nearest */
  readonly outOfGamut: boolean;
  readonly deltaE00: number;
  /** ΔE00 lost by rounding to whole parts */
  readonly roundingLoss: number;
  /**
   * ΔE00 that opens between target and recipe from D65 to A (CIE special index of metamerism for a change of light,
   * multiplicative correction), the target taken as the smoothest reflectance of its colour.
   */
  readonly metamerism: number;
}

/** What a search for a colour found. */
export interface Match {
  /** best first; never empty unless there is no paint */
  readonly recipes: readonly Recipe[];
  readonly reachable: boolean;
  /** where it is not reachable: why */
  readonly limit?: Limit;
}

/** Beyond this many paints only those that promise most alone and in pairs are mixed further. */
const MOST_PAINTS = 16;
/** A recipe with a paint more must be better by this ΔE00 to be worth naming beside the simpler one. */
const WORTH = 0.05;

/** How far a set's rounded recipe may come out better than the proportions it was rounded from, which are nearest in a metric taken at the target. */
const SLACK = 0.3;

/** ΔE00 from which the metric at the target no longer describes the gap. */
const FAR = 2;

interface Candidate {
  readonly subset: readonly number[];
  readonly logParts: Float64Array;
  readonly deltaE00: number;
}

export function match(request: MatchRequest): Match {
  const {
    target,
    paints,
    thickness,
    below,
    face,
    light = 'D65',
    most = 4,
    within = 2,
    recipes: wanted = 5,
  } = request;
  if (paints.length === 0 || !(thickness > 0)) return { recipes: [], reachable: false };
  const mixer = createMixer(paints, request.medium, thickness, below, face, light);
  const count = Math.min(most, paints.length);
  let metric = metricAt(target);
  let candidates = solveAll(mixer, createSolver(mixer, target, metric, count), count);
  if (candidates[0]!.deltaE00 > FAR) {
    // CIEDE2000 weighs a wide gap by its middle: measured there, the search goes the right way.
    const nearest = labOf(mixer, candidates[0]!);
    metric = metricAt([0, 1, 2].map((i) => (target[i]! + nearest[i]!) / 2) as unknown as Lab);
    candidates = scanned(mixer, target, solveAgain(createSolver(mixer, target, metric, count), candidates));
  }

  const found: (Rounded & { readonly subset: readonly number[]; readonly exact: number })[] = [];
  const worst = (): number =>
    found.length < wanted ? Number.POSITIVE_INFINITY : found[wanted - 1]!.deltaE00 + SLACK;
  for (const { subset, logParts, deltaE00: exact } of candidates) {
    if (exact > worst()) break;
    found.push({ ...wholeParts(mixer, subset, logParts, target, metric), subset, exact });
    found.sort(order);
  }
  for (let i = 0; i < Math.min(found.length, 3 * wanted); i++)
    found[i] = { ...found[i]!, ...polished(mixer, found[i]!.subset, found[i]!, target) };
  found.sort(order);
  const partOf = (a: readonly number[], b: readonly number[]): boolean =>
    a.length < b.length && a.every((p) => b.includes(p));
  const distinct = found.filter(
    (f) => !found.some((g) => partOf(g.subset, f.subset) && g.deltaE00 < f.deltaE00 + WORTH),
  );
  const chosen = distinct.slice(0, wanted);
  const reference = smoothSpectrum(target).seen;
  const recipes = chosen.map((f): Recipe => {
    // What is promised is the model's own colour, not the table's.
    const seen = spectrumOf(request, f.subset, f.parts);
    const lab = toLab(toXyz(seen, light), light);
    const off = deltaE00(target, lab);
    return {
      parts: f.subset.map((p, i) => ({ paint: paints[p]!.name, parts: f.parts[i]! })),
      lab,
      ...shown(lab),
      deltaE00: off,
      roundingLoss: Math.max(0, off - f.exact),
      metamerism: metamerism(seen, reference),
    };
  });
  const best = recipes[0]!;
  const reachable = best.deltaE00 <= within;
  return reachable
    ? { recipes, reachable }
    : {
        recipes,
        reachable,
        limit: limitOf(target, best.lab, toColour(below, face, light).lab, strained(best)),
      };
}

function labOf(mixer: Mixer, { subset, logParts }: Candidate): Float64Array {
  const lab = new Float64Array(3);
  mixer.evaluate(subset, logParts, lab);
  return lab;
}

/** Whether the weakest part is already as small against the largest as whole parts allow. */
const strained = ({ parts }: Recipe): boolean =>
  Math.max(...parts.map((p) => p.parts)) >= MOST_PARTS * Math.min(...parts.map((p) => p.parts));

const order = (a: { deltaE00: number; subset: readonly number[] }, b: typeof a): number =>
  a.deltaE00 - b.deltaE00 || a.subset.length - b.subset.length || compare(a.subset, b.subset);

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return a.length - b.length;
}

/** All sets of up to `most` paints, each at its nearest proportions, nearest set first. */
function solveAll(mixer: Mixer, solver: Solver, most: number): Candidate[] {
  let paints = Array.from({ length: mixer.count }, (_, i) => i);
  const all: Candidate[] = [];
  const solved = new Map<string, Candidate>();
  const add = (subset: readonly number[], starts: readonly Float64Array[]): void => {
    let best: Candidate | undefined;
    for (const start of starts) {
      const logParts = start;
      const off = solver.solve(subset, logParts);
      if (!best || off < best.deltaE00) best = { subset, logParts, deltaE00: off };
      if (best.deltaE00 < 0.02) break;
    }
    all.push(best!);
    solved.set(subset.join(), best!);
  };
  for (const p of paints) add([p], [new Float64Array(1)]);
  for (let size = 2; size <= most; size++) {
    if (size === 3 && paints.length > MOST_PAINTS) paints = promising(all, MOST_PAINTS);
    for (const subset of subsets(paints, size)) add(subset, starts(mixer, subset, solved));
  }
  return all.sort(order);
}

/** The same sets under another metric, each from where it was. */
const solveAgain = (solver: Solver, candidates: readonly Candidate[]): Candidate[] =>
  candidates
    .map((c) => {
      const logParts = Float64Array.from(c.logParts);
      const deltaE00 = solver.solve(c.subset, logParts);
      return deltaE00 < c.deltaE00 ? { ...c, logParts, deltaE00 } : c;
    })
    .sort(order);

/**
 * Far from its target CIEDE2000 has valleys apart (in the blues above all): sets of two and three are sifted through a
 * coarse sieve of proportions too, and take what they find there where it is better.
 */
function scanned(mixer: Mixer, target: Lab, candidates: readonly Candidate[]): Candidate[] {
  const lab = new Float64Array(3);
  const sift = (c: Candidate, proportions: readonly (readonly number[])[]): Candidate => {
    let best = c;
    for (const logs of proportions) {
      const logParts = Float64Array.from(logs);
      mixer.evaluate(c.subset, logParts, lab);
      const off = deltaE00Of(target[0], target[1], target[2], lab[0]!, lab[1]!, lab[2]!);
      if (off < best.deltaE00) best = { ...c, logParts, deltaE00: off };
    }
    return best;
  };
  return candidates
    .map((c) => (c.subset.length === 2 ? sift(c, SIEVE_2) : c.subset.length === 3 ? sift(c, SIEVE_3) : c))
    .sort(order);
}

const sieve = (count: number, size: number): number[][] =>
  size === 0
    ? [[]]
    : sieve(count, size - 1).flatMap((rest) =>
        Array.from({ length: count }, (_, i) => [...rest, (LEAST_LOG * i) / (count - 1)]),
      );
/** Only mixtures whose largest part is 1: the rest are the same again. */
const SIEVE_2 = sieve(9, 2).filter((logs) => Math.max(...logs) === 0);
const SIEVE_3 = sieve(4, 3).filter((logs) => Math.max(...logs) === 0);

/** Where to begin: parts that count alike, and what the best set with one paint less found, the new one barely there. */
function starts(
  mixer: Mixer,
  subset: readonly number[],
  solved: ReadonlyMap<string, Candidate>,
): Float64Array[] {
  const even = Float64Array.from(subset, (p) => -Math.log(Math.max(1e-9, mixer.strength[p]!)));
  const top = Math.max(...even);
  for (let i = 0; i < even.length; i++) even[i] = Math.max(LEAST_LOG * 0.8, even[i]! - top);
  let best: { candidate: Candidate; left: number } | undefined;
  subset.forEach((_, left) => {
    const candidate = solved.get(subset.filter((__, i) => i !== left).join());
    if (candidate && (!best || candidate.deltaE00 < best.candidate.deltaE00)) best = { candidate, left };
  });
  const out = [even];
  if (best) {
    const from = new Float64Array(subset.length);
    for (let i = 0, j = 0; i < subset.length; i++)
      from[i] = i === best.left ? LEAST_LOG * 0.7 : best.candidate.logParts[j++]!;
    out.push(from);
  }
  if (subset.length === 2)
    for (const lean of [0, 1]) out.push(Float64Array.from([0, 1], (i) => (i === lean ? 0 : LEAST_LOG * 0.9)));
  return out;
}

function* subsets(of: readonly number[], size: number, from = 0): Generator<readonly number[]> {
  if (size === 0) yield [];
  else
    for (let i = from; i <= of.length - size; i++)
      for (const rest of subsets(of, size - 1, i + 1)) yield [of[i]!, ...rest];
}

function promising(all: readonly Candidate[], count: number): number[] {
  const chosen = new Set<number>();
  for (const { subset } of [...all].sort(order))
    for (const p of subset) if (chosen.size < count) chosen.add(p);
  return [...chosen].sort((a, b) => a - b);
}

/** Reflectance in air of a recipe. */
function spectrumOf(
  { paints, medium, thickness, below, face }: MatchRequest,
  subset: readonly number[],
  parts: readonly number[],
): Spectrum {
  const share = Math.min(0.99, Math.max(0, medium?.share ?? 0));
  const whole = parts.reduce((s, v) => s + v, 0);
  let dry = share * (medium?.solids ?? 1);
  subset.forEach((p, i) => {
    dry += ((1 - share) * parts[i]! * (paints[p]!.solids ?? 1)) / whole;
  });
  const pigments = subset.flatMap((p, i) =>
    paints[p]!.pigments.map(({ optical, fraction }) => ({
      optical,
      fraction: ((1 - share) * parts[i]! * Math.max(0, fraction)) / whole / Math.max(1e-6, dry),
    })),
  );
  return leaving(layOn({ pigments, thickness }, below), face);
}

/** CIE special index of metamerism, D65 to A, in ΔE00, with multiplicative correction of what differs under D65. */
export function metamerism(sample: Spectrum, reference: Spectrum): number {
  const [s65, r65] = [toXyz(sample, 'D65'), toXyz(reference, 'D65')];
  const sA = toXyz(sample, 'A').map((v, i) => (v * r65[i]!) / Math.max(1e-9, s65[i]!)) as [
    number,
    number,
    number,
  ];
  return deltaE00(toLab(sA, 'A'), toLab(toXyz(reference, 'A'), 'A'));
}
