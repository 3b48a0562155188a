import { allPigments } from '../../materials/catalogue.ts';
import type { Pigment } from '../../materials/types.ts';
import type { Fix, Layer } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { isFilm, shareOfPigment } from '../shared/beneath.ts';
import { replace } from '../shared/fixes.ts';
import { mainly } from '../shared/instead.ts';
import { isClear, isOpaqueWhite, partsWith } from '../shared/pigments.ts';
import { labelAtStart, listed, percent, practice, quoted } from '../shared/words.ts';

/** Shares of the pigment by volume from which an opaque colour, and a semi-opaque one, is more than a touch. */
const TOUCH = { opaque: 0.05, 'semi-opaque': 0.2 };

/** The same code in its transparent variety, where the layer names the code itself. */
function transparentInstead(layer: Layer, pigment: Pigment): Fix[] {
  const clear = allPigments().find((p) => p.code === pigment.code && p.variety === 'transparent');
  const word = partsWith(layer, (p) => p === pigment).find(
    (p) => p.ingredient.is.kind === 'pigment',
  )?.ingredient;
  if (!clear || pigment.code === undefined || !word || (word.is.kind === 'pigment' && word.is.own)) return [];
  return [
    replace(`Write ${clear.id}`, { ...word.place, end: word.variety?.place.end ?? word.place.end }, clear.id),
  ];
}

/** Opaque or semi-opaque colours in a glaze; whites have a rule of their own. */
export const opaqueInGlaze: Rule = {
  id: 'opaque-in-glaze',
  title: 'Opaque colour in a glaze',
  theme: 'glazes',
  severity: 'warning',
  why: 'An opaque pigment hides what lies below however much medium thins it; the depth that a glaze is laid for does not come.',
  whatToDo: 'Use a transparent pigment of the same hue, or call the layer a scumble.',
  sources: [practice('transparency classes as the trade prints them; marks stand with each pigment')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l) {
    if (l.layer.kind !== 'glaze' || !isFilm(l)) return;
    for (const kind of ['opaque', 'semi-opaque'] as const) {
      const hides = (p: Pigment) => p.transparency.value === kind && !isOpaqueWhite(p);
      const hiding = l.composition.pigments.filter((p) => hides(p.pigment));
      if (hiding.length === 0) continue;
      const share = shareOfPigment(l.composition, hides);
      if (share < TOUCH[kind]) continue;
      yield {
        message: `${labelAtStart(l.layer)} holds ${listed(hiding.map((p) => quoted(p.pigment.id)))}, ${kind}, ${percent(share)} of its pigment by volume: it will ${kind === 'opaque' ? 'hide' : 'veil'} what lies below. Use a transparent pigment, or make it a scumble.`,
        place: l.layer.colour?.kind === 'formula' ? l.layer.colour.formula.place : l.layer.namePlace,
        layer: l.layer.index,
        objection: mainly(l.composition, hides, isClear),
        severity: kind === 'opaque' ? 'warning' : 'info',
        fixes: [
          ...(hiding.length === 1 ? hiding.flatMap((p) => transparentInstead(l.layer, p.pigment)) : []),
          replace('Make it a scumble', l.layer.kindPlace, 'scumble'),
        ],
      };
    }
  },
};
