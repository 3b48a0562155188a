import { TEMPERATURE } from '../../study/defaults.ts';
import { dryingOf } from '../../study/what-if.ts';
import type { Rule } from '../rule.ts';
import { isOilFilm } from '../shared/films.ts';
import { figure, labelAtStart, ours, published, span } from '../shared/words.ts';

/** Dates of a film that was dry far sooner or later than the model has it. */
export const dryUnlikeEstimate: Rule = {
  id: 'dry-unlike-estimate',
  title: 'Dry sooner or later than estimated',
  theme: 'drying',
  severity: 'info',
  why: 'What was seen beats what is estimated, and sets the pace for the same paint and medium afterwards. A slip of a date would carry into every day that follows.',
  whatToDo:
    'See that both dates are right, and that oil, medium and film are as they were. If so, keep them.',
  sources: [
    published(
      'Gardner, Paint Technology and Tests (1911), tables VIII and XV: raw linseed oil nearly dry in a day, and wet after twenty',
    ),
    ours('told where the days lie outside the range of touch-dry, looked at once a day'),
  ],
  restsOn: ['film', 'time', 'climate'],
  appliesTo: ['plan'],
  *checkLayer(l, _others, { studio }) {
    const { painted, dry } = l.layer;
    if (!painted || !dry || !isOilFilm(l) || dry.number < painted.number) return;
    const days = dry.number - painted.number;
    const touchDry = dryingOf(l.layer, studio.temperature?.value ?? TEMPERATURE)?.touchDry;
    if (!touchDry || (days + 1 >= touchDry.low && days - 1 <= touchDry.high)) return;
    const when =
      days === 0 ? 'on the day it was painted' : `${figure(days)} day${days === 1 ? '' : 's'} after`;
    yield {
      message: `${labelAtStart(l.layer)} was seen dry ${when}; such a film takes ${span(touchDry, 'days')}. If the dates are right they stand, and the same paint and medium follow them; see that oil, medium and film are as they were.`,
      place: dry.place,
      layer: l.layer.index,
      related: [{ message: 'painted', place: painted.place }],
    };
  },
};
