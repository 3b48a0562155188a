import { solvent as solventNamed } from '../../materials/catalogue.ts';
import { stepCaution } from '../../materials/cautions.ts';
import type { Interval } from '../../materials/interval.ts';
import type { Fix, Plan } from '../../plan/plan.ts';
import type { Air, Study } from '../../results/study.ts';
import { countedLimit, quarterLimits, type RankedLimit } from '../../studio/air-limits.ts';
import type { Rule } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { sittingOf } from '../shared/sitting.ts';
import { figure, memory, ours, published } from '../shared/words.ts';

/** More fresh air than this an open window and a fan do not give (common practice). */
const MOST_CHANGES = 15;

/** What is published for a solvent of the study: that of a working day, and of a quarter of an hour. */
function limitsOf({ name }: Air['solvents'][number]) {
  const solvent = solventNamed(name);
  return { day: solvent && countedLimit(solvent), quarter: solvent && quarterLimits(solvent)[0] };
}

/** Solvents whose vapour stands above what may not be passed over a quarter of an hour. */
const overQuarter = ({ solvents }: Air, bound: keyof Interval): readonly Air['solvents'][number][] =>
  solvents.filter((s) => (s.mgPerM3?.[bound] ?? 0) > (limitsOf(s).quarter?.mg ?? Number.POSITIVE_INFINITY));

const allowed = ({ ppm, mgPerM3, mg }: RankedLimit): string =>
  ppm !== undefined ? `${ppm} ppm` : `${figure(mgPerM3 ?? mg)} mg/m³`;

function moreAir(plan: Plan, needed: Interval | undefined): Fix[] {
  const { airChanges } = plan.studio;
  if (!needed || !airChanges || airChanges.given !== 'exact') return [];
  const changes = Math.ceil(needed.likely * 1.05);
  if (!(changes > airChanges.value.likely) || changes > MOST_CHANGES) return [];
  const text = airChanges.words.replace(/^[\d.]+/, String(changes));
  return text === airChanges.words
    ? []
    : [replace(`Plan for ${changes} air changes an hour`, airChanges.place, text)];
}

/** What of each solvent is in the air, in the unit of the limit it is held against, and whose that is. */
const about = (x: Interval): string =>
  figure(x.low) === figure(x.high)
    ? figure(x.likely)
    : `${figure(x.likely)} (${figure(x.low)}–${figure(x.high)})`;

const held = (air: Air): string =>
  air.solvents
    .flatMap((s) => {
      const { day } = limitsOf(s);
      if (!day || !s.mgPerM3) return [];
      const { limit, standIn } = day;
      if (standIn)
        return [
          `${s.name} ${about(s.mgPerM3)} mg/m³, counted as turpentine, of which ${limit.whose} allows ${figure(limit.mg)}`,
        ];
      const inPpm = limit.ppm !== undefined ? s.ppm : undefined;
      const inAir = inPpm ? `${about(inPpm)} ppm` : `${about(s.mgPerM3)} mg/m³`;
      return [`${s.name} ${inAir}, ${limit.whose} allows ${figure((inPpm && limit.ppm) ?? limit.mg)}`];
    })
    .join('; ');

/** The air of the worst sitting, against the published limits. */
export const vapourOverLimit: Rule = {
  id: 'vapour-over-limit',
  title: 'More vapour than the limit',
  theme: 'health',
  severity: 'warning',
  why: 'Solvent that leaves the film, the rag and the brush jar ends in the air you breathe. Above the published limits it makes ill, at once or over years; smell is no measure.',
  whatToDo:
    'Air the room more, take less solvent or another medium, keep the brush jar closed, or divide the work over several sittings.',
  sources: [
    published('NIOSH Pocket Guide to Chemical Hazards and OSHA limits, as each solvent’s entry gives them'),
    {
      text: 'limits of ACGIH, SCOEL (EU), TRGS 900 (Germany) and WEEL as others quote them: of all the strictest counts',
      mark: 'second-hand',
    },
    memory(
      'additive mixture rule of occupational hygiene: the sum of concentration over limit is to stay below 1',
    ),
    ours(
      'everything evaporates within the session; held against limits meant for the average of a working day',
    ),
    stepCaution('any-solvent').source,
  ],
  restsOn: ['film', 'air', 'surface'],
  appliesTo: ['plan'],
  *check(plan: Plan, study: Study) {
    const { air } = study;
    const layer = plan.layers.find((l) => l.name === air?.layer);
    const ratio = air?.mixtureRatio;
    if (!air || !layer || !ratio) return;
    const likely = overQuarter(air, 'likely');
    if (!(ratio.likely > 1) && likely.length === 0) return;
    const severity = overQuarter(air, 'low').length > 0 ? 'error' : 'warning';
    const quarter = likely
      .flatMap((s) => {
        const limit = limitsOf(s).quarter;
        return limit
          ? ` Over a quarter of an hour ${limit.whose} allows no more than ${allowed(limit)} of ${s.name}.`
          : [];
      })
      .join('');
    const needed = air.neededAirChanges
      ? air.neededAirChanges.likely > MOST_CHANGES
        ? ' No window airs that away.'
        : ` About ${figure(air.neededAirChanges.likely)} air changes an hour would keep it at the limit.`
      : '';
    const sitting = sittingOf(plan, air, layer);
    yield {
      message: `A sitting ${sitting.at} brings the air to ${about(ratio)} times the limit: ${held(air)}.${quarter}${needed} Air the room, take less solvent, close the brush jar. An estimate: the safety data sheet and the codes of your place come first.`,
      place: sitting.place,
      severity,
      layer: sitting.layer,
      fixes: moreAir(plan, air.neededAirChanges),
    };
  },
};
