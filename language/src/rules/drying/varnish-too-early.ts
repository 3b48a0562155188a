import { binder } from '../../materials/catalogue.ts';
import type { Fix, Layer } from '../../plan/plan.ts';
import type { Drying, LayerStudy, Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import type { FilmStudy } from '../shared/beneath.ts';
import { isOilFilm, isOily, on } from '../shared/films.ts';
import { addFields, replace } from '../shared/fixes.ts';
import { daysAfter, daysBetween } from '../shared/laid.ts';
import { softest } from '../shared/soft.ts';
import { figure, firmAfter, label, labelAtStart, listed, ours, practice } from '../shared/words.ts';

/** Days of six months as the language counts them. */
const LEAST_DAYS = 6 * 30.4375;
/** µm up to which it is a retouching varnish, which the trade lays earlier. */
const RETOUCHING_UM = 5;

/** Months after which nobody plans to come back with a varnish. */
const LONGEST_MONTHS = 24;
const MONTH = 30.4375;

/** Lets the varnish wait so many days, in months. */
function afterLonger(layer: Layer, days: number): Fix[] {
  const months = Math.ceil(days / MONTH - 1e-9);
  if (layer.painted || months > LONGEST_MONTHS) return [];
  const title = `Varnish after ${months} months`;
  return layer.after
    ? [replace(title, layer.after.place, `${months} months`)]
    : addFields(title, layer, [`after ${months} months`]);
}

type Painted = FilmStudy & { readonly drying: Drying };

const isVarnish = (l: LayerStudy): l is LayerStudy => l.layer.kind === 'varnish';
const isPainted = (l: LayerStudy): l is Painted =>
  isOilFilm(l) && l.drying !== undefined && l.layer.kind !== 'varnish' && l.layer.kind !== 'ground';

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

/** Oils and alkyds of a film, most first, that hold a tenth of its binder at least. */
function boundIn({ binders }: FilmStudy['composition']): string {
  const all = binders.reduce((sum, b) => sum + b.volumeFraction.likely, 0);
  const most = binders
    .filter((b) => b.volumeFraction.likely >= 0.1 * all)
    .sort((a, b) => b.volumeFraction.likely - a.volumeFraction.likely);
  return listed(most.map(({ binder: id }) => binder(id)?.names[0] ?? id));
}

/** A varnish over paint that has not dried through. */
export const varnishTooEarly: Rule = {
  id: 'varnish-too-early',
  title: 'Varnished too early',
  theme: 'drying',
  severity: 'warning',
  why: 'Paint goes on taking up oxygen and moving for months, thick paint for years. A varnish laid on it too early sinks in, cracks with it and becomes one with it, so that it can never be taken off alone.',
  whatToDo:
    'Wait six months at least, a year for thick paint, longer for impasto; until then, a thin retouching varnish if the darks have sunk.',
  sources: [
    practice('six months to a year between the last paint and the varnish'),
    ours(
      'firm as the drying model has it: it grows with the thickness of the film and the slowness of its oil',
    ),
  ],
  restsOn: ['film', 'time', 'climate'],
  appliesTo: ['plan'],
  *check(plan, study) {
    const soft = new Map([...softest(study, isVarnish, isPainted)].map((s) => [s.upper, s]));
    for (const l of study.layers) {
      if (!isVarnish(l)) continue;
      const young = youngest(study, l);
      const tender = soft.get(l);
      const lacks = young ? LEAST_DAYS - young.days : 0;
      const thin = (l.dryFilm?.likely ?? 0) <= RETOUCHING_UM;
      const then = thin
        ? ' So thin, it may pass as a retouching varnish.'
        : ' Wait, or lay only a breath of it for now.';
      const place = l.layer.after?.place ?? l.layer.painted?.place ?? l.layer.namePlace;
      // of the two the one that is longer to wait for
      if (tender && tender.firm.likely - tender.days > lacks) {
        const { below, area, days, firm } = tender;
        const coat = below.composition.dryFilm.likely;
        yield {
          message: `${labelAtStart(l.layer)} lies ${daysAfter(Math.max(0, Math.round(days)))} ${label(below.layer)}${on(plan, area)}: ${figure(coat)} µm of paint in ${boundIn(below.composition)}, likely ${firmAfter(firm.likely)}.${then}`,
          place,
          layer: l.layer.index,
          severity: thin || days >= firm.low ? 'info' : 'warning',
          related: [
            { message: `${labelAtStart(below.layer)} is still soft below`, place: below.layer.namePlace },
          ],
          fixes: afterLonger(l.layer, firm.likely),
        };
        continue;
      }
      if (!young || lacks <= 1e-6) continue;
      const { below, area, days } = young;
      yield {
        message: `${labelAtStart(l.layer)} lies ${daysAfter(Math.max(0, days))} ${label(below.layer)}${on(plan, area)}; paint wants six months at least (about ${Math.ceil(LEAST_DAYS)} days) before it is varnished.${then}`,
        place,
        layer: l.layer.index,
        severity: thin ? 'info' : 'warning',
        related: [
          { message: `${labelAtStart(below.layer)} is the last paint`, place: below.layer.namePlace },
        ],
        fixes: afterLonger(l.layer, LEAST_DAYS),
      };
    }
  },
};
