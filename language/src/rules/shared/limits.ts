/** The limits several rules of fat and adhesion share, and whether a film keeps within them. Fatness as a fraction. */
import type { LayerKind } from '../../plan/plan.ts';
import type { Composition, LayerStudy, Study } from '../../results/study.ts';
import { type FilmStudy, touching } from './beneath.ts';
import { fromMedium, isOilFilm, isWaterBorne, spirit } from './films.ts';

/** A dry film this fat is closed and glossy; a layer this fat on it draws back. */
export const BEADS = { below: 0.5, upper: 0.4 };

/** Share of the dry film that came with the medium: more slides and wrinkles. */
export const MEDIUM = { glaze: 0.85, other: 0.5 };
const THIN: readonly LayerKind[] = ['glaze', 'imprimatura', 'drawing'];
export const mostFromMedium = (kind: LayerKind): number =>
  THIN.includes(kind) ? MEDIUM.glaze : MEDIUM.other;

/** Share of the applied paint that evaporates. */
export const SPIRIT = { info: 0.5, warning: 0.65 };

/** A coat this fat and this thick (µm) wrinkles. */
export const FAT_FILM = { fatness: 0.4, film: 40 };

/** Below this (µm) a coat is a veil or a wash, and forgiven much. */
export const VEIL_UM = 10;

export const isThickAndFat = (c: Composition): boolean =>
  c.fatness.likely >= FAT_FILM.fatness && c.dryFilm.likely >= FAT_FILM.film;

export const hasTooMuchMedium = (kind: LayerKind, c: Composition): boolean =>
  c.dryFilm.likely >= VEIL_UM && fromMedium(c) > mostFromMedium(kind);

/** Whether a fatter or leaner film in place of a layer's own breaks none of these limits that its own keeps. */
export function keepsLimits(study: Study, film: FilmStudy, changed: Composition): boolean {
  const { kind } = film.layer;
  const own = film.composition;
  if (isWaterBorne(changed)) return false;
  if (changed.lambda.likely > 1 && own.lambda.likely <= 1) return false;
  if (spirit(changed) > SPIRIT.info && spirit(own) <= SPIRIT.info) return false;
  if (hasTooMuchMedium(kind, changed) && !hasTooMuchMedium(kind, own)) return false;
  if (isThickAndFat(changed) && !isThickAndFat(own)) return false;
  return !wouldBead(study, film, changed);
}

const fatAt = (c: Composition, limit: number): boolean => c.fatness.likely >= limit;
const unprepared = (l: LayerStudy): boolean => l.layer.prepare.length === 0;

/** Whether the changed film would bead on what lies beneath, or let what lies above bead, where its own does not. */
function wouldBead(study: Study, film: FilmStudy, changed: Composition): boolean {
  const own = film.composition;
  if (unprepared(film)) {
    if (!fatAt(own, BEADS.upper) && fatAt(changed, BEADS.upper)) {
      const lower = touching(study, film).map((t) => t.below);
      if (lower.some((l) => isOilFilm(l) && fatAt(l.composition, BEADS.below))) return true;
    }
    if (film.coats > 1 && !fatAt(own, BEADS.below) && fatAt(changed, BEADS.below)) return true;
  }
  if (fatAt(own, BEADS.below) || !fatAt(changed, BEADS.below)) return false;
  return study.layers.some(
    (l) =>
      l.layer.index > film.layer.index &&
      unprepared(l) &&
      isOilFilm(l) &&
      fatAt(l.composition, BEADS.upper) &&
      touching(study, l).some((t) => t.below.layer.index === film.layer.index),
  );
}
