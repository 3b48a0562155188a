import { stepCaution } from '../../materials/cautions.ts';
import type { Interval } from '../../materials/interval.ts';
import type { Fix, Plan } from '../../plan/plan.ts';
import type { Air, Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { sittingOf } from '../shared/sitting.ts';
import { figure, listed, memory, ours, published, span } from '../shared/words.ts';

/** More fresh air than this an open window and a fan do not give (common practice). */
const MOST_CHANGES = 15;

/** Solvents whose vapour stands above the ceiling that may not be passed at any time. */
function overCeiling({ solvents }: Air, bound: keyof Interval): string[] {
  return solvents
    .filter(({ ceiling, ppm, mgPerM3 }) =>
      ceiling?.ppm !== undefined && ppm
        ? ppm[bound] > ceiling.ppm
        : ceiling?.mgPerM3 !== undefined && mgPerM3
          ? mgPerM3[bound] > ceiling.mgPerM3
          : false,
    )
    .map((s) => s.name);
}

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

const amounts = (air: Air): string =>
  listed(
    air.solvents
      .filter((s) => s.ppm ?? s.mgPerM3)
      .map((s) =>
        s.ppm ? `${s.name} ${span(s.ppm, 'ppm')}` : `${s.name} ${span(s.mgPerM3 as Interval, 'mg/m³')}`,
      ),
  );

const limits = (air: Air): string =>
  listed(
    air.solvents.flatMap((s) =>
      s.limit?.ppm !== undefined
        ? [`${s.name} ${s.limit.ppm} ppm`]
        : s.limit?.mgPerM3 !== undefined
          ? [`${s.name} ${s.limit.mgPerM3} mg/m³`]
          : [],
    ),
  );

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
    const surely = overCeiling(air, 'low');
    const likely = overCeiling(air, 'likely');
    if (!(ratio.likely > 1) && likely.length === 0) return;
    const severity = surely.length > 0 ? 'error' : ratio.low > 1 || likely.length > 0 ? 'warning' : 'info';
    const ceiling =
      likely.length > 0 ? ` ${listed(likely)} stands above the ceiling that no moment may pass.` : '';
    const needed = air.neededAirChanges
      ? ` About ${figure(air.neededAirChanges.likely)} air changes an hour would keep it at the limit.`
      : '';
    const sitting = sittingOf(plan, air, layer);
    yield {
      message: `A sitting ${sitting.at} brings the air to ${span(ratio, 'times')} the limit (${amounts(air)}; limits ${limits(air)}).${ceiling}${needed} Air the room, take less solvent, close the brush jar. An estimate: the safety data sheet and the codes of your place come first.`,
      place: sitting.place,
      severity,
      layer: sitting.layer,
      fixes: moreAir(plan, air.neededAirChanges),
    };
  },
};
