import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { touching } from '../shared/beneath.ts';
import { coveredBy, on } from '../shared/films.ts';
import { daysAfter, daysPainted, waitLonger } from '../shared/laid.ts';
import { figure, label, labelAtStart, ours, practice, span } from '../shared/words.ts';

const counts = (l: LayerStudy): boolean => !['ground', 'size', 'drawing'].includes(l.layer.kind);

/** Painted dates against the interval: an error where even the fastest drying would not do. */
function* tooEarly(upper: LayerStudy, study: Study): Generator<RuleReport> {
  for (const { below, area } of touching(study, upper)) {
    const days = daysPainted(below.layer, upper.layer);
    const { drying } = below;
    if (days === undefined || days < 0 || !drying || !counts(below)) continue;
    if (days >= drying.ready.likely - 1e-6) continue;
    const where = `${labelAtStart(upper.layer)} was painted ${daysAfter(days)} ${label(below.layer)} below it${on(study.plan, area)}`;
    const about = {
      place: upper.layer.painted?.place ?? upper.layer.namePlace,
      layer: upper.layer.index,
      related: [
        {
          message: `${labelAtStart(below.layer)} is ready after ${span(drying.ready, 'days')}`,
          place: below.layer.painted?.place ?? below.layer.namePlace,
        },
      ],
    };
    const wet = days <= drying.open.low && upper.layer.kind !== 'glaze' && upper.layer.kind !== 'varnish';
    if (wet)
      yield {
        ...about,
        severity: 'info',
        message: `${where}, into wet paint: they dry as one film. If that is meant, reckon with the thickness of both; if not, wait ${span(drying.ready, 'days')}.`,
      };
    else
      yield {
        ...about,
        severity: days < drying.ready.low - 1e-6 ? 'error' : 'warning',
        message: `${where}, which is ready to be painted over after ${span(drying.ready, 'days')}, about ${figure(drying.ready.likely)}: it ${days < drying.ready.low ? 'was' : 'may have been'} too early. The skin below tears or lifts; let both firm well before anything more.`,
      };
  }
}

/** A wait shorter than the layer takes. */
function* shortWait(l: LayerStudy, others: () => Study): Generator<RuleReport> {
  const { wait } = l.layer;
  if (!wait || wait.given === 'unknown' || !l.drying || !counts(l)) return;
  const { ready } = l.drying;
  if (wait.value.likely >= ready.likely - 1e-6 || !coveredBy(others(), l.layer)) return;
  yield {
    severity: 'info',
    message: `${labelAtStart(l.layer)} is likely ready after ${figure(ready.likely)} days (${span(ready, 'days')}), later than its wait of ${wait.words}: the calendar follows the drying.`,
    place: wait.place,
    layer: l.layer.index,
    fixes: waitLonger(l.layer, ready.likely),
  };
}

/** Painted over before it could bear it. */
export const notReady: Rule = {
  id: 'not-ready',
  title: 'Painted over before it is ready',
  theme: 'drying',
  severity: 'warning',
  why: 'A film that is not ready is lifted by the brush and by the spirit in the next, and goes on shrinking under it. Dry to the touch is not enough: it wants half as long again.',
  whatToDo:
    'Wait until the layer below is ready; try it with a fingernail in a corner before you trust an estimate.',
  sources: [
    practice('touch-dry comes before ready: the next layer waits for ready'),
    ours('ready at 1.2 to 2 times touch-dry, as the drying model has it'),
  ],
  restsOn: ['film', 'time', 'climate'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (l.layer.painted) yield* tooEarly(l, others());
    else yield* shortWait(l, others);
  },
};
