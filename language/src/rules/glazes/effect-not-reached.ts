import type { Rule } from '../rule.ts';
import { figure, labelAtStart, ours, practice, quoted } from '../shared/words.ts';

/** A film asked for by its lightness that no thickness can have there. */
export const effectNotReached: Rule = {
  id: 'effect-not-reached',
  title: 'Lightness that no film reaches',
  theme: 'glazes',
  severity: 'warning',
  why: 'A film changes what lies beneath it towards its own full colour and no further: a glaze only darkens, a scumble grows no lighter than its paint. Past that no thickness helps, and a coat that is very thick dries badly.',
  whatToDo:
    'Ask for a lightness between what lies beneath and the full colour of the paint, change the paint, or lighten or darken what lies beneath. Until then the figures are those of the nearest film that is usual for such a layer.',
  sources: [
    practice('glazes darken, scumbles lighten'),
    {
      text: 'Kubelka & Munk, Z. techn. Physik 12 (1931) 593: a film tends to the colour of an endless one as it grows',
      mark: 'second-hand',
    },
    ours('films from 0.1 µm a coat to 300 µm in all are tried; within 0.1 of L* counts as reached'),
  ],
  restsOn: ['film', 'films beneath'],
  appliesTo: ['plan'],
  *checkLayer({ layer, coats }) {
    const { film } = layer;
    const effect = film?.effect;
    if (!film || !effect || effect.found?.reached) return;
    const { found } = effect;
    const wanted = `L* ${effect.lightness.words}`;
    const nowhere =
      effect.in && !effect.in.areas.some((a) => layer.areas.includes(a))
        ? `it does not lie on ${quoted(effect.in.name)}`
        : 'no colour can be predicted for it there';
    yield {
      message: found
        ? `${labelAtStart(layer)} comes to ${wanted} in ${quoted(found.area)} with no film of 0.1 to 300 µm: beneath it lies L* ${figure(found.beneath)}. Reckoned with ${figure(film.value.likely)} µm${coats > 1 ? ' a coat' : ''}, the nearest that is usual for such a layer: L* ${figure(found.lightness)}.`
        : `${labelAtStart(layer)} is to come to ${wanted}, but ${nowhere}. Reckoned with a film that is usual for such a layer; write its µm, or mend what is missing.`,
      place: film.place,
      layer: layer.index,
    };
  },
};
