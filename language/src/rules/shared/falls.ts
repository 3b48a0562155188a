/**
 * Where a film falls in fatness against what lies beneath it: the measure of lean-over-fat. Of all films beneath on an
 * area only a few can matter (the one right beneath, the fattest, the one that is fattest even at its least), so these
 * are kept while walking upwards, and a plan of a thousand layers is walked once.
 */
import type { Layer, Severity } from '../../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../../results/study.ts';
import { type FilmStudy, filmOf } from './beneath.ts';
import { isMostlyAlkyd, isOilFilm } from './films.ts';
import { laidUnready } from './laid.ts';
import { VEIL_UM } from './limits.ts';

/** Points of fatness, as fractions, by which a film may fall before anyone speaks, warns, refuses. */
export const FALL = { info: 0.05, warning: 0.1, error: 0.2 };
/** µm: what must lie below, and on it, for the worst. */
const THICK = { below: 15, upper: 10 };
/** Share of solids by which a medium may fall behind the one below. */
const MEDIUM_FALL = 0.05;
/** µm of binder beyond what its pigments need: a film beneath that holds less of it pulls at nothing. */
const BREATH = 2.5;
/** Arithmetic on fractions is not exact; a limit is met within this. */
const HAIR = 1e-9;

export interface Candidate {
  readonly below: FilmStudy;
  readonly area: string;
  /** right beneath */
  readonly next: boolean;
}

export interface Fall extends Candidate {
  readonly severity: Severity;
  /** of the film, or only of the medium's own share of oil */
  readonly of: 'film' | 'medium';
  readonly points: number;
  /** why the film beneath does little harm */
  readonly mild?: 'veil' | 'set';
}

/** A washed-in tone, a turpentine drawing: there is too little of it to move what lies on it. */
const isBreath = (below: FilmStudy, b: Composition): boolean =>
  filmOf(below) < VEIL_UM && filmOf(below) * b.fatness.likely < BREATH;

function mildness(below: FilmStudy, upper: Layer): Fall['mild'] {
  if (filmOf(below) < VEIL_UM) return 'veil';
  return isMostlyAlkyd(below.composition) && !laidUnready(below, upper) ? 'set' : undefined;
}

/** How a film of composition `u` falls against one below it; nothing where it does not, or not so that it matters. */
export function fallOf(
  { below, area, next }: Candidate,
  upper: FilmStudy,
  u: Composition = upper.composition,
  b: Composition = below.composition,
): Fall | undefined {
  if (isBreath(below, b)) return undefined;
  const points = b.fatness.likely - u.fatness.likely;
  if (points < FALL.info - HAIR) {
    const poorer =
      next &&
      b.mediumShare.likely > 0 &&
      u.mediumShare.likely > 0 &&
      b.mediumSolids - u.mediumSolids >= MEDIUM_FALL - HAIR;
    return poorer && points > 0 ? { below, area, next, severity: 'info', of: 'medium', points } : undefined;
  }
  const mild = mildness(below, upper.layer);
  // A veil or a set alkyd film with something on it no longer pulls at what comes after.
  if (mild && !next) return undefined;
  const sure = b.fatness.low - u.fatness.high > FALL.error + HAIR;
  const thick = filmOf(below) >= THICK.below - HAIR && filmOf(upper) >= THICK.upper - HAIR;
  const severity = mild || points <= FALL.warning + HAIR ? 'info' : sure && thick ? 'error' : 'warning';
  return { below, area, next, severity, of: 'film', points, mild };
}

const RANK: Record<Severity, number> = { error: 3, warning: 2, info: 1, hint: 0 };

export const worst = (falls: readonly (Fall | undefined)[]): Fall | undefined =>
  falls.reduce((a, b) => {
    if (!a || !b) return a ?? b;
    const by = RANK[b.severity] - RANK[a.severity];
    return by > 0 || (by === 0 && b.points > a.points) ? b : a;
  }, undefined);

interface Track {
  readonly next?: LayerStudy;
  readonly fattest?: FilmStudy;
  /** of the films thick enough for an error, the one that is fattest at its least */
  readonly surest?: FilmStudy;
}

const known = new WeakMap<Study, readonly (readonly Candidate[])[]>();

/** For each layer, the films beneath it that it may fall against. */
export function candidates(study: Study): readonly (readonly Candidate[])[] {
  const remembered = known.get(study);
  if (remembered) return remembered;
  const tracks = new Map<string, Track>();
  const made = study.layers.map((layer) => {
    const here = new Map<number, Candidate>();
    for (const area of layer.areas) {
      const { next, fattest, surest } = tracks.get(area) ?? {};
      for (const below of [next, fattest, surest])
        if (isOilFilm(below) && below.layer.kind !== 'varnish' && !here.has(below.layer.index))
          here.set(below.layer.index, { below, area, next: below === next });
        else if (below && below === next && here.has(below.layer.index) && isOilFilm(below))
          here.set(below.layer.index, { below, area, next: true });
    }
    for (const area of layer.areas) tracks.set(area, laidOn(tracks.get(area) ?? {}, layer));
    return [...here.values()];
  });
  known.set(study, made);
  return made;
}

function laidOn(track: Track, layer: LayerStudy): Track {
  if (layer.layer.kind === 'drawing') return track;
  if (!isOilFilm(layer) || layer.layer.kind === 'varnish') return { ...track, next: layer };
  const still = filmOf(layer) < VEIL_UM || isMostlyAlkyd(layer.composition);
  const { fattest, surest } = track;
  const { likely, low } = layer.composition.fatness;
  const thick = filmOf(layer) >= THICK.below - HAIR;
  return {
    next: layer,
    fattest: !still && !(fattest && fattest.composition.fatness.likely >= likely) ? layer : fattest,
    surest: !still && thick && !(surest && surest.composition.fatness.low >= low) ? layer : surest,
  };
}

/** The worst fall of a layer, as it is or with another composition of its own or of one film beneath. */
export function fall(
  study: Study,
  upper: FilmStudy,
  u: Composition = upper.composition,
  other?: { readonly index: number; readonly composition: Composition },
): Fall | undefined {
  return worst(
    (candidates(study)[upper.layer.index] ?? []).map((c) =>
      fallOf(c, upper, u, c.below.layer.index === other?.index ? other.composition : c.below.composition),
    ),
  );
}

/** The fattest a film may be so that nothing above it that keeps the rule now would break it. */
export function ceiling(study: Study, film: FilmStudy): number {
  let least = Number.POSITIVE_INFINITY;
  for (const upper of study.layers) {
    if (upper.layer.index <= film.layer.index || !isOilFilm(upper) || upper.layer.kind === 'varnish')
      continue;
    if (!upper.areas.some((a) => film.areas.includes(a))) continue;
    if (!fall(study, upper)) least = Math.min(least, upper.composition.fatness.likely + FALL.info);
  }
  return least;
}
