import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { touching } from '../shared/beneath.ts';
import { coveredBy } from '../shared/films.ts';
import { daysAfter, daysPainted, waitLonger } from '../shared/laid.ts';
import { figure, label, labelAtStart, practice, span } from '../shared/words.ts';

const isGround = (l: LayerStudy): boolean => l.layer.kind === 'ground' || l.layer.kind === 'size';
const HAIR = 1e-6;

/** Painting on a ground before it has done drying. */
export const groundNotCured: Rule = {
  id: 'ground-not-cured',
  title: 'Painting on a ground too young',
  theme: 'drying',
  severity: 'warning',
  why: 'An acrylic ground gives off water and wetting agents for days after it feels dry, an oil ground moves for weeks. What is painted on it too early sinks, slides or cracks with it.',
  whatToDo:
    'Give acrylic grounds three days at least, better two weeks or a month; glue grounds some days; oil grounds weeks to months.',
  sources: [
    practice('acrylic ground: three days at least before oil, two weeks usual, a month better'),
    practice('oil ground: weeks to months'),
  ],
  restsOn: ['time', 'climate'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    const { wait, painted } = l.layer;
    if (painted) yield* onYoungGround(others(), l);
    else if (isGround(l) && l.drying && wait && wait.given !== 'unknown') {
      const { ready } = l.drying;
      if (wait.value.likely >= ready.likely - HAIR || !coveredBy(others(), l.layer)) return;
      const least = wait.value.likely < ready.low - HAIR;
      yield {
        message: `${labelAtStart(l.layer)} wants ${span(ready, 'days')}, usually ${figure(ready.likely)}; a wait of ${wait.words} is ${least ? 'less than the least' : 'short'}. The calendar follows the ground; let the plan say so too.`,
        place: wait.place,
        layer: l.layer.index,
        severity: least ? 'warning' : 'info',
        fixes: waitLonger(l.layer, ready.likely),
      };
    }
  },
};

function* onYoungGround(study: Study, upper: LayerStudy): Generator<RuleReport> {
  for (const { below } of touching(study, upper)) {
    const days = daysPainted(below.layer, upper.layer);
    if (!isGround(below) || isGround(upper) || !below.drying || days === undefined || days < 0) continue;
    const { ready } = below.drying;
    if (days >= ready.likely - HAIR) continue;
    yield {
      message: `${labelAtStart(upper.layer)} was painted ${daysAfter(days)} ${label(below.layer)}, which wants ${span(ready, 'days')}, usually ${figure(ready.likely)}. Let both stand before anything more.`,
      place: upper.layer.painted?.place ?? upper.layer.namePlace,
      layer: upper.layer.index,
      severity: days < ready.low - HAIR ? 'warning' : 'info',
      related: [
        {
          message: `${labelAtStart(below.layer)} was laid`,
          place: below.layer.painted?.place ?? below.layer.namePlace,
        },
      ],
    };
  }
}
