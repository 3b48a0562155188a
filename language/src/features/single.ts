/** One paint or mix alone: what it brings to a film, and its colour where it covers. */
import type { Lab } from '../optics/cie.ts';
import { opticalData } from '../optics/data.ts';
import type { Paint as MatchPaint } from '../optics/match.ts';
import { groundOf } from '../optics/spectrum.ts';
import { layOn, toColour } from '../optics/stack.ts';
import { GLOSS } from '../optics/surface.ts';
import type { Formula, Ingredient, Layer } from '../plan/plan.ts';
import { unsaid } from '../plan/unsaid.ts';
import type { Study } from '../results/study.ts';
import { compositionOf } from '../study/what-if.ts';

export const nowhere = { uri: '', start: 0, end: 0 };

/** A layer of one paint alone, to learn what the paint brings. */
function alone(ingredient: Ingredient, like: Layer | undefined): Layer {
  const formula: Formula = { parts: [{ ingredient, place: nowhere }], amounts: 'none', place: nowhere };
  const empty: Layer = {
    kind: 'layer',
    name: '',
    index: -1,
    place: nowhere,
    namePlace: nowhere,
    kindPlace: nowhere,
    everywhere: true,
    ...unsaid(),
  };
  return { ...(like ?? empty), colour: { kind: 'formula', formula }, medium: undefined };
}

export function matchPaint(
  study: Study,
  name: string,
  ingredient: Ingredient,
  like: Layer | undefined,
): MatchPaint[] {
  const composition = compositionOf(alone(ingredient, like));
  if (!composition) return [];
  const solids = composition.volumeSolids.likely;
  const pigments = composition.pigments.flatMap((p) => {
    const own = study.plan.visible.pigments.get(p.pigment.id);
    const optical =
      (own && study.calibration(own).data) ??
      opticalData(p.pigment.id) ??
      (own?.like?.is.kind === 'pigment' ? opticalData(own.like.is.pigment.id) : undefined);
    return optical ? [{ optical, fraction: p.volumeFraction.likely * solids }] : [];
  });
  // a paint with a pigment nobody has measured cannot be mixed by calculation
  return pigments.length === composition.pigments.length ? [{ name, pigments, solids }] : [];
}

/** µm: thick enough that hardly any paint shows what lies beneath. */
export const COVERING_UM = 150;
/** CIELAB of a white ground */
export const PRIMED: Lab = [94, 0, 3];

/** The masstone: a thick film over a primed ground, glossy. Undefined where a pigment has no optical data. */
export function masstone(study: Study, name: string, ingredient: Ingredient): Lab | undefined {
  const [paint] = matchPaint(study, name, ingredient, undefined);
  if (!paint || !(paint.solids && paint.solids > 0)) return undefined;
  const solids = paint.solids;
  const pigments = paint.pigments.map(({ optical, fraction }) => ({ optical, fraction: fraction / solids }));
  return toColour(layOn({ pigments, thickness: COVERING_UM }, groundOf(PRIMED, GLOSS)), GLOSS).lab;
}
