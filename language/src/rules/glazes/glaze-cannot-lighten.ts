import type { Pigment } from '../../materials/types.ts';
import type { Lab } from '../../optics/cie.ts';
import type { Plan } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { isFilm, shareOfPigment } from '../shared/beneath.ts';
import { replace } from '../shared/fixes.ts';
import { beneathOf, glazesOnTop, lightness, step, wiped } from '../shared/seen.ts';
import { figure, labelAtStart, ours, practice, quoted } from '../shared/words.ts';

/** Lighter than beneath by less than this in L* is within what anybody can tell. */
const TELLING = 3;

/** L* by which a glaze lightens clearly, where its uncertainty is not more. */
const LIGHTENS = 6;

interface Rise {
  readonly area: string;
  readonly from: Lab;
  readonly to: Lab;
  readonly radius: number;
}

/** Where a glaze is predicted to lighten most, beyond its uncertainty. */
function rise(study: Study, l: LayerStudy): Rise | undefined {
  let most: Rise | undefined;
  for (const { area, radius } of l.colours()) {
    const seen = wiped(l.layer, area) ? undefined : step(study, l.layer.index, area);
    if (!seen || seen.after[0] - seen.before[0] <= Math.max(LIGHTENS, radius)) continue;
    if (!most || seen.after[0] - seen.before[0] > most.to[0] - most.from[0])
      most = { area, from: seen.before, to: seen.after, radius };
  }
  return most;
}

/** Glazes that lighten of themselves; opaque colours in them are told by other rules. */
function* scattering(plan: Plan, study: Study): Generator<RuleReport> {
  for (const l of study.layers) {
    if (l.layer.kind !== 'glaze' || !isFilm(l)) continue;
    const hiding = ({ transparency }: Pigment) => transparency.value.endsWith('opaque');
    if (shareOfPigment(l.composition, hiding) >= 0.02) continue;
    const lightening = rise(study, l);
    if (!lightening) continue;
    const where = plan.implicitArea ? 'what lies beneath' : `what lies beneath on ${quoted(lightening.area)}`;
    yield {
      message: `${labelAtStart(l.layer)} is predicted to lighten ${where}, from ${lightness(lightening.from)} to ${lightness(lightening.to)} (± ${Math.round(lightening.radius)}): it scatters light where a glaze takes it away, so it veils the darks. Lay it thinner or with more medium, or make it a scumble.`,
      place: l.layer.namePlace,
      severity: 'info',
      layer: l.layer.index,
      related: beneathOf(study, l.layer.index, lightening.area),
      fixes: [replace('Make it a scumble', l.layer.kindPlace, 'scumble')],
    };
  }
}

/** A target lighter than what the last glazes lie on: transparent colour only takes light away. */
export const glazeCannotLighten: Rule = {
  id: 'glaze-cannot-lighten',
  title: 'Glaze that lightens, or is asked to',
  theme: 'glazes',
  severity: 'warning',
  why: 'A glaze is a filter: it takes light away and never adds any. What is to end lighter must be lighter beneath, or be scumbled; a film that scatters enough to lighten is no glaze.',
  whatToDo:
    'Lighten what lies beneath the glaze, change it into a scumble with some white, or aim at a darker colour.',
  sources: [
    practice('glazes darken, scumbles lighten'),
    {
      text: 'Kubelka & Munk, Z. techn. Physik 12 (1931) 593: a film without scattering only absorbs',
      mark: 'second-hand',
    },
    ours('6 of L* beyond its uncertainty as a film that lightens'),
  ],
  restsOn: ['film', 'films beneath', 'tolerance'],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    yield* scattering(plan, study);
    for (const area of study.areas) {
      const target = area.target();
      const first = target && plan.layers[glazesOnTop(study, area.name)[0] ?? -1];
      if (!target || !first) continue;
      const colours = area.buildUp();
      const beneath = colours.filter((c) => c.index < first.index).at(-1)?.colour;
      const last = colours.at(-1)?.colour;
      if (!beneath || !last) continue;
      const lacking = target.lab[0] - beneath.lab[0];
      if (lacking <= TELLING || last.lab[0] > target.lab[0] - TELLING) continue;
      const wanted = plan.targets.findLast((t) => t.in?.areas.includes(area.name));
      yield {
        message: `${labelAtStart(first)} cannot bring ${area.name === 'everything' ? 'the picture' : quoted(area.name)} to its target: that has ${lightness(target.lab)}, what the glaze lies on is darker by ${figure(lacking)} (${lightness(beneath.lab)}, ± ${Math.round(beneath.radius)}), and a glaze only takes light away. Lighten what lies beneath, or scumble.`,
        place: first.namePlace,
        severity: lacking > Math.max(TELLING, beneath.radius) ? 'warning' : 'info',
        layer: first.index,
        related: wanted ? [{ message: `the target, ${lightness(target.lab)}`, place: wanted.place }] : [],
      };
    }
  },
};
