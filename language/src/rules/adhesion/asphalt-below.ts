import type { Rule } from '../rule.ts';
import { isFilm } from '../shared/beneath.ts';
import { coveredBy } from '../shared/films.ts';
import { mainly } from '../shared/instead.ts';
import { isAsphalt, pigmentPlace } from '../shared/pigments.ts';
import { label, labelAtStart, practice, published } from '../shared/words.ts';

/** A film that never dries, under others. */
export const asphaltBelow: Rule = {
  id: 'asphalt-below',
  title: 'Asphalt below other layers',
  theme: 'adhesion',
  severity: 'error',
  why: 'Asphaltum never dries for good: warmth softens it again, it runs and crawls, and everything on it breaks into islands.',
  whatToDo:
    'Mix the brown from a transparent iron oxide and a black; no medium or waiting time makes asphalt sound.',
  sources: [
    published('Gettens & Stout, Painting Materials (1942) p.94: never dries permanently, runs and crawls'),
    practice('asphalt is left out of oil painting'),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (
      !isFilm(l) ||
      !l.composition.pigments.some((p) => isAsphalt(p.pigment) && p.volumeFraction.likely > 0)
    )
      return;
    const upper = coveredBy(others(), l.layer);
    if (!upper) return;
    yield {
      message: `${labelAtStart(l.layer)} holds asphaltum, and ${label(upper.layer)} lies on it: the asphalt never dries and tears what is above it. Mix the brown from a transparent iron oxide and a black.`,
      place: pigmentPlace(l.layer, isAsphalt),
      layer: l.layer.index,
      objection: mainly(l.composition, isAsphalt),
      related: [{ message: `${labelAtStart(upper.layer)} lies on it`, place: upper.layer.namePlace }],
    };
  },
};
