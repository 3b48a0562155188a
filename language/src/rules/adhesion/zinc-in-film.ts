import type { Fix, Formula, Ingredient, Layer, Place, Plan, Severity } from '../../plan/plan.ts';
import type { LayerStudy } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { filmOf } from '../shared/beneath.ts';
import { isOilFilm } from '../shared/films.ts';
import { mainly } from '../shared/instead.ts';
import { VEIL_UM } from '../shared/limits.ts';
import { isZincWhite, pigmentPlace, zincSource } from '../shared/pigments.ts';
import { labelAtStart, ours, percent } from '../shared/words.ts';

/** Mass of zinc white in the dry film from which it is told, warned of, refused on a flexible support. */
const STEPS = [0.05, 0.15, 0.25];
const LEVELS: readonly Severity[] = ['info', 'warning', 'error'];

/** One step milder on what does not bend, and for a veil; nothing where that leaves none. */
function severityOf(l: LayerStudy, share: number, flexible: boolean): Severity | undefined {
  const step = STEPS.filter((s) => share >= s - 1e-9).length;
  const milder = (flexible ? 0 : 1) + (filmOf(l) < VEIL_UM ? 1 : 0);
  return LEVELS[step - milder - 1];
}

/** A paint of zinc white, or of titanium white, and nothing else. */
const isAll = (code: string, { is }: Ingredient): boolean =>
  is.kind === 'paint' &&
  is.paint.formula !== undefined &&
  is.paint.formula.parts.every(
    (p) => p.ingredient.is.kind === 'pigment' && p.ingredient.is.pigment.code === code,
  );

/** Titanium white wherever the layer's own file names zinc white for it: a paint of the plan where there is one. */
function titanium(plan: Plan, layer: Layer): Fix[] {
  if (layer.colour?.kind !== 'formula') return [];
  const white = plan.paints.find((p) =>
    p.formula?.parts.every(({ ingredient: { is } }) => is.kind === 'pigment' && is.pigment.code === 'PW6'),
  );
  const edits: { place: Place; text: string }[] = [];
  const opened = new Set<Formula>([layer.colour.formula]);
  for (const formula of opened)
    for (const { ingredient } of formula.parts) {
      const { is, place } = ingredient;
      if (place.uri !== plan.uri) return [];
      if (is.kind === 'pigment' && isZincWhite(is.pigment)) edits.push({ place, text: 'PW6' });
      else if (white && isAll('PW4', ingredient)) edits.push({ place, text: white.name });
      else if (is.kind === 'paint' && is.paint.formula) opened.add(is.paint.formula);
      else if (is.kind === 'mix' && is.mix.formula) opened.add(is.mix.formula);
    }
  return edits.length > 0 ? [{ title: `Use titanium white${white ? ` (${white.name})` : ''}`, edits }] : [];
}

/** Zinc white in a layer of paint. */
export const zincInFilm: Rule = {
  id: 'zinc-in-film',
  title: 'Zinc white in an oil film',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Zinc white and oil make soaps, and the film turns brittle within years. On canvas, which moves, it cracks and lifts; on a stiff support it lasts longer.',
  whatToDo:
    'Use titanium white, warmed or let down with chalk, or lead white where law and care allow it; keep zinc for veils on stiff supports.',
  sources: [
    zincSource,
    ours(
      'told from 5, 15 and 25 % of the dry film by mass; one step milder on a stiff support and for a veil under 10 µm',
    ),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others, outside) {
    // a support nobody named is taken as canvas, the worse case
    const kind = outside.support?.material?.is?.kind;
    const flexible = kind === undefined || kind === 'flexible' || kind === 'paper';
    if (!isOilFilm(l) || l.layer.kind === 'ground') return;
    const share = l.composition.pigments
      .filter((p) => isZincWhite(p.pigment))
      .reduce((sum, p) => sum + p.massFraction.likely, 0);
    const severity = severityOf(l, share, flexible);
    if (!severity) return;
    const { plan } = others();
    yield {
      message: `${labelAtStart(l.layer)} holds zinc white, ${percent(share)} of its dry film by mass: with oil it turns brittle within years${flexible ? ', and on a support that bends it cracks and lifts' : ''}. Use titanium white, or lead white where law and care allow it.`,
      place: pigmentPlace(l.layer, isZincWhite),
      layer: l.layer.index,
      objection: mainly(l.composition, isZincWhite),
      severity,
      fixes: () => titanium(plan, l.layer),
    };
  },
};
