import type { Rule } from '../rule.ts';
import { isFilm } from '../shared/beneath.ts';
import { isOilFilm } from '../shared/films.ts';
import { isZincWhite, partsWith, pigmentPlace, withoutParts, zincSource } from '../shared/pigments.ts';
import { labelAtStart, percent, practice } from '../shared/words.ts';

/** Zinc white in what everything lies on. */
export const zincInGround: Rule = {
  id: 'zinc-in-ground',
  title: 'Zinc white in an oil ground',
  theme: 'adhesion',
  severity: 'error',
  why: 'Zinc white and oil make soaps: within years the film is brittle as glass and lets go of what lies on it. In a ground it takes the whole picture with it.',
  whatToDo:
    'Ground with titanium white, chalk or barytes in oil, lead white where law and care allow it, or an acrylic ground.',
  sources: [zincSource, practice('no zinc white in grounds')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l) {
    if (l.layer.kind !== 'ground' || !isOilFilm(l) || !isFilm(l)) return;
    const zinc = l.composition.pigments.find((p) => isZincWhite(p.pigment));
    if (!zinc || !(zinc.massFraction.likely > 0)) return;
    const formula = l.layer.colour?.kind === 'formula' ? l.layer.colour.formula : undefined;
    // only what is zinc white and nothing else can be left out without losing another colour
    const out = partsWith(l.layer, isZincWhite).filter(
      ({ ingredient: { is } }) =>
        (is.kind === 'pigment' && isZincWhite(is.pigment)) ||
        (is.kind === 'paint' &&
          is.paint.formula?.parts.every(
            (p) => p.ingredient.is.kind === 'pigment' && isZincWhite(p.ingredient.is.pigment),
          )),
    );
    const edits = formula && out.length > 0 ? withoutParts(formula, out) : undefined;
    const all = partsWith(l.layer, isZincWhite).length === out.length;
    yield {
      message: `${labelAtStart(l.layer)} holds zinc white, ${percent(zinc.massFraction.likely)} of its dry film by mass: an oil ground with zinc turns brittle and lets go of the painting. Use another white.`,
      place: pigmentPlace(l.layer, isZincWhite),
      layer: l.layer.index,
      fixes: edits && all ? [{ title: 'Leave the zinc white out', edits }] : [],
    };
  },
};
