import type { Rule } from '../rule.ts';
import { beneathOf, step, wiped } from '../shared/seen.ts';
import { figure, labelAtStart } from '../shared/words.ts';

/** A glaze or scumble whose predicted change is too small to be seen anywhere. */
export const glazeInvisible: Rule = {
  id: 'glaze-invisible',
  title: 'Glaze that will not be seen',
  theme: 'glazes',
  severity: 'info',
  why: 'A difference below 1 ΔE00 is about the least a trained eye tells side by side. A film that changes the colour by less costs drying time and binder for nothing.',
  whatToDo:
    'Lay it thicker or with less medium, choose a colour that differs from what lies beneath, or leave it out.',
  sources: [
    {
      text: 'CIE 142-2001 and ISO/CIE 11664-6 for the difference; about 1 as just noticeable is common practice',
      mark: 'common practice',
    },
  ],
  restsOn: ['film', 'films beneath'],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    for (const layer of plan.layers) {
      if (layer.kind !== 'glaze' && layer.kind !== 'scumble') continue;
      if (!study.layers[layer.index]?.composition?.pigments.length) continue;
      const areas = layer.areas.filter((a) => !wiped(layer, a));
      const steps = areas.map((a) => step(study, layer.index, a));
      if (steps.length === 0 || steps.some((s) => s === undefined || s.deltaE00 >= 1)) continue;
      const most = Math.max(...steps.map((s) => s?.deltaE00 ?? 0));
      yield {
        message: `${labelAtStart(layer)} will hardly be seen: it changes the colour beneath by ${figure(most)} ΔE00 at most, and less than 1 escapes the eye. Make it stronger, or leave it out.`,
        place: layer.namePlace,
        layer: layer.index,
        related: beneathOf(study, layer.index, areas[0] ?? ''),
      };
    }
  },
};
