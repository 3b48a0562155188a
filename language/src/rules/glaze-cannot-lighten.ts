import type { Rule } from './rule.ts';
import { glazesOnTop, lightness } from './seen.ts';
import { Called, figure, practice, quoted } from './words.ts';

/** Lighter than beneath by less than this in L* is within what anybody can tell. */
const TELLING = 3;

/** A target lighter than what the last glazes lie on: transparent colour only takes light away. */
export const glazeCannotLighten: Rule = {
  id: 'glaze-cannot-lighten',
  title: 'Glaze asked to lighten',
  severity: 'warning',
  why: 'A glaze is a filter: it takes light away and never adds any. What is to end lighter must be lighter beneath, or be scumbled.',
  whatToDo:
    'Lighten what lies beneath the glaze, change it into a scumble with some white, or aim at a darker colour.',
  sources: [
    practice('glazes darken, scumbles lighten'),
    {
      text: 'Kubelka & Munk, Z. techn. Physik 12 (1931) 593: a film without scattering only absorbs',
      mark: 'second-hand',
    },
  ],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
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
        message: `${Called(first)} cannot bring ${area.name === 'everything' ? 'the picture' : quoted(area.name)} to its target: that has ${lightness(target.lab)}, what the glaze lies on is darker by ${figure(lacking)} (${lightness(beneath.lab)}, ± ${Math.round(beneath.radius)}), and a glaze only takes light away. Lighten what lies beneath, or scumble.`,
        place: first.namePlace,
        severity: lacking > Math.max(TELLING, beneath.radius) ? 'warning' : 'info',
        layer: first.index,
        related: wanted ? [{ message: `the target, ${lightness(target.lab)}`, place: wanted.place }] : [],
      };
    }
  },
};
