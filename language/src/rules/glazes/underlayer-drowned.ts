import type { Rule } from '../rule.ts';
import { beneathOf, lightness, step } from '../shared/seen.ts';
import { figure, labelAtStart, listed, practice, quoted } from '../shared/words.ts';

/** L* an underlayer must stand off from what lies beneath it, so that it can be modelled in. */
const STANDS_OFF = 8;

/** An underlayer as light as the ground it is painted on. */
export const underlayerDrowned: Rule = {
  id: 'underlayer-drowned',
  title: 'Underlayer lost in its ground',
  theme: 'glazes',
  severity: 'info',
  why: 'An underlayer fixes light and shade, and can do so only where it stands off from the tone beneath. Greys as dark as the ground drown in it, and glazes on top will not bring them back.',
  whatToDo:
    'Paint it lighter or darker, give it more body, or choose a ground of another lightness: a light ground for darks, a dark one for lights.',
  sources: [practice('an underlayer some 8 in L* off the tone of its ground can be modelled in')],
  restsOn: ['film', 'films beneath'],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    for (const layer of plan.layers) {
      if (layer.kind !== 'underlayer' || layer.areas.length === 0) continue;
      const steps = layer.areas.flatMap((area) => {
        const colours = step(study, layer.index, area);
        return colours ? [{ area, ...colours, off: Math.abs(colours.after[0] - colours.before[0]) }] : [];
      });
      const drowned = steps.filter((s) => s.off < STANDS_OFF);
      const worst = drowned.toSorted((a, b) => a.off - b.off)[0];
      // on some areas it may be meant to run into the ground
      if (!worst || drowned.length < steps.length) continue;
      const where = plan.implicitArea
        ? ''
        : ` on ${listed([...new Set(drowned.map((s) => quoted(s.area)))].slice(0, 4))}`;
      yield {
        message: `${labelAtStart(layer)} hardly stands off from what lies beneath it${where}: ${lightness(worst.after)} over ${lightness(worst.before)}, ${figure(worst.off)} apart, where about ${STANDS_OFF} are wanted to model in. Make it lighter, darker or fuller.`,
        place: layer.namePlace,
        layer: layer.index,
        related: beneathOf(study, layer.index, worst.area),
      };
    }
  },
};
