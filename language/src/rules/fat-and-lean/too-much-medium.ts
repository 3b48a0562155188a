import type { Fix, LayerKind } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import type { FilmStudy } from '../shared/beneath.ts';
import { fall } from '../shared/falls.ts';
import { fromMedium, isMediumAlone, isOilFilm } from '../shared/films.ts';
import { mostFromMedium, VEIL_UM } from '../shared/limits.ts';
import { mostShare, shareOf, takeShare, type Wanted } from '../shared/otherwise.ts';
import { figure, labelAtStart, ours, percent, practice } from '../shared/words.ts';

/** Where it is a warning, µm per coat; thinner films are told of at most. */
const THICK_UM = { glaze: VEIL_UM, other: 25 };
const LEFT_OUT: readonly LayerKind[] = ['varnish', 'size', 'leaf'];

function fixes(study: Study, film: FilmStudy): Fix[] {
  const { layer } = film;
  const falls = fall(study, film) !== undefined;
  const less: Wanted = (c) => fromMedium(c) <= mostFromMedium(layer.kind) && (falls || !fall(study, film, c));
  const percentage = mostShare(layer, shareOf(layer) - 1, less);
  return percentage === undefined ? [] : takeShare(layer, percentage);
}

/** A film that is medium with a little paint in it, too thick to be that. */
export const tooMuchMedium: Rule = {
  id: 'too-much-medium',
  title: 'Too much medium for its thickness',
  theme: 'fat-and-lean',
  severity: 'warning',
  why: 'A film that is mostly medium slides while it is wet, skins over and wrinkles as it dries, and yellows. Thin as a breath it does no harm.',
  whatToDo: 'Take less medium, or lay it so thin that the brush hardly finds it.',
  sources: [
    practice('medium sparingly; what runs under the brush is too rich'),
    ours(
      'told where more than 85 % of a glaze, or half of a body layer, came with the medium; a warning from 10 and 25 µm',
    ),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (!isOilFilm(l) || LEFT_OUT.includes(l.layer.kind) || isMediumAlone(l.layer)) return;
    const limit = mostFromMedium(l.layer.kind);
    const share = fromMedium(l.composition);
    const coat = l.composition.dryFilm.likely;
    const glaze = limit > 0.5;
    if (share <= limit + 1e-9 || (!glaze && coat < VEIL_UM)) return;
    const thick = coat >= (glaze ? THICK_UM.glaze : THICK_UM.other);
    yield {
      message: `${labelAtStart(l.layer)} has ${percent(share)} of its dry film from the medium, ${figure(coat)} µm a coat: ${thick ? 'it slides while wet and wrinkles as it dries' : 'it holds little colour and will yellow'}. Take less medium${thick ? ', or lay it thinner' : ''}.`,
      place: l.layer.medium?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      severity: thick ? 'warning' : 'info',
      fixes: fixes(others(), l),
    };
  },
};
