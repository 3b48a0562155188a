import type { Fix, Layer } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { isOily, on } from '../shared/films.ts';
import { addFields, replace } from '../shared/fixes.ts';
import { daysAfter, daysBetween } from '../shared/laid.ts';
import { label, labelAtStart, practice } from '../shared/words.ts';

/** Days of six months as the language counts them. */
const LEAST_DAYS = 6 * 30.4375;
/** µm up to which it is a retouching varnish, which the trade lays earlier. */
const RETOUCHING_UM = 5;

const afterLonger = (layer: Layer): Fix[] =>
  layer.after
    ? [replace('Varnish after 6 months', layer.after.place, '6 months')]
    : addFields('Varnish after 6 months', layer, ['after 6 months']);

/** The oil layer beneath that is youngest when the varnish is laid. */
function youngest(study: Study, varnish: LayerStudy) {
  let young: { below: LayerStudy; area: string; days: number } | undefined;
  for (const [area, indices] of varnish.below)
    for (const i of indices) {
      const below = study.layers[i];
      if (!below || below.layer.kind === 'varnish' || below.layer.kind === 'ground' || !isOily(below))
        continue;
      const days = daysBetween(study, below.layer, varnish.layer);
      if (days !== undefined && (!young || days < young.days)) young = { below, area, days };
      break;
    }
  return young;
}

/** A varnish over paint that has not dried through. */
export const varnishTooEarly: Rule = {
  id: 'varnish-too-early',
  title: 'Varnished too early',
  theme: 'drying',
  severity: 'warning',
  why: 'Paint goes on taking up oxygen and moving for months. A varnish laid on it too early sinks in, cracks with it and becomes one with it, so that it can never be taken off alone.',
  whatToDo:
    'Wait six months at least, a year for thick paint; until then, a thin retouching varnish if the darks have sunk.',
  sources: [practice('six months to a year between the last paint and the varnish')],
  restsOn: ['film', 'time', 'climate'],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    if (l.layer.kind !== 'varnish') return;
    const study = others();
    const lowest = youngest(study, l);
    if (!lowest || lowest.days >= LEAST_DAYS - 1e-6) return;
    const { below, area, days } = lowest;
    const thin = (l.dryFilm?.likely ?? 0) <= RETOUCHING_UM;
    yield {
      message: `${labelAtStart(l.layer)} lies ${daysAfter(Math.max(0, days))} ${label(below.layer)}${on(study.plan, area)}; paint wants six months at least (about ${Math.ceil(LEAST_DAYS)} days) before it is varnished.${thin ? ' So thin, it may pass as a retouching varnish.' : ' Wait, or lay only a breath of it for now.'}`,
      place: l.layer.after?.place ?? l.layer.painted?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      severity: thin ? 'info' : 'warning',
      related: [{ message: `${labelAtStart(below.layer)} is the last paint`, place: below.layer.namePlace }],
      fixes: l.layer.painted ? [] : afterLonger(l.layer),
    };
  },
};
