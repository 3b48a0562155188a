import { parseColour } from '../../optics/css.ts';
import { deltaE00 } from '../../optics/difference.ts';
import type { Rule } from '../rule.ts';
import { figure, labelAtStart, ours, quoted } from '../shared/words.ts';

/** Nearer than this a difference is of no interest, however small the radius. */
const LEAST = 5;

/** A colour as measured, well outside what was predicted for it. */
export const measuredFarFromPredicted: Rule = {
  id: 'measured-far-from-predicted',
  title: 'Measured colour far from the predicted',
  theme: 'glazes',
  severity: 'info',
  why: 'Where a measured colour lies outside the radius of its prediction, the film, the medium or the pigment was another than the text says, or time has changed it.',
  whatToDo:
    'Check film, medium and paints against what was done; a swatch of the paint in hand makes the next prediction better.',
  sources: [
    { text: 'ISO/CIE 11664-6 (CIEDE2000) for the difference', mark: 'published' },
    ours('beyond the radius of the prediction and beyond 5 ΔE00'),
  ],
  restsOn: ['film', 'films beneath'],
  appliesTo: ['plan', 'record'],
  needsColour: true,
  *check(plan, study) {
    for (const layer of plan.layers)
      for (const { colour, in: where, place } of layer.measured) {
        const lab = parseColour(colour.css);
        if (!lab) continue;
        // without a word where, the nearest of its areas is meant
        const nearest = (study.layers[layer.index]?.colours() ?? [])
          .filter((c) => !where || where.areas.includes(c.area))
          .map((c) => ({ ...c, off: deltaE00(lab, c.lab) }))
          .sort((a, b) => a.off - b.off)[0];
        if (!nearest || nearest.off <= Math.max(LEAST, nearest.radius)) continue;
        const on = plan.implicitArea ? '' : ` on ${quoted(nearest.area)}`;
        yield {
          message: `${labelAtStart(layer)} was measured${on} ${figure(nearest.off)} ΔE00 from what is predicted (${nearest.lab.map((v) => Math.round(v)).join(', ')} in L*a*b*), beyond the ${figure(nearest.radius)} the prediction may be off. Film, medium or paint differ from the text, or time has changed the colour.`,
          place,
          layer: layer.index,
        };
      }
  },
};
