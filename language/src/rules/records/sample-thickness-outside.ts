import type { Fix, Layer, Plan } from '../../plan/plan.ts';
import { thicknessOutside } from '../../studio/samples.ts';
import type { Rule } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { label, ours, quoted, span } from '../shared/words.ts';

/** Tenths of a µm, outwards, so that what was measured lies within. */
const outwards = (low: number, high: number): string =>
  [Math.floor(low * 10 + HAIR) / 10, Math.ceil(high * 10 - HAIR) / 10].join('..');
const HAIR = 1e-6;

/** Widens the film of the record so that every sample of it fits; not where several coats share the figure. */
function widened(plan: Plan, layer: Layer): Fix[] {
  const { film, coats } = layer;
  if (!film || film.given === 'word' || (coats && coats.value.likely !== 1)) return [];
  const all = plan.samples
    .flatMap((s) =>
      s.layers.filter((e) => e.layer.is === layer && e.film?.given !== 'unknown').map((e) => e.film?.value),
    )
    .filter((m) => m !== undefined)
    .concat(film.value);
  const text = `${outwards(Math.min(...all.map((m) => m.low)), Math.max(...all.map((m) => m.high)))} µm`;
  return [replace(`Write film ${text}`, film.place, text)];
}

/** A layer thicker or thinner in a cross-section than the record has it. */
export const sampleThicknessOutside: Rule = {
  id: 'sample-thickness-outside',
  title: 'Sample outside the film of its layer',
  theme: 'records',
  severity: 'warning',
  why: 'The film a record gives for a layer is to hold for what was measured of it. A cross-section outside it is a slip, another layer, or a reason to widen the range.',
  whatToDo: 'Check the measurement and the name, or widen the range of the layer.',
  sources: [ours('a film stated as one figure is an average from which single places differ by 30 %')],
  restsOn: ['film'],
  appliesTo: ['record'],
  *check(plan) {
    for (const { sample, layer, found, expected, side, place } of thicknessOutside(plan)) {
      const of = plan.layers.find((l) => l.name === layer);
      if (!of) continue;
      yield {
        message: `Sample ${sample} has ${quoted(layer)} at ${span(found, 'µm')}, ${side} than the ${span(expected, 'µm')} that ${label(of)} is recorded with. Check the sample, or widen the range.`,
        place,
        layer: of.index,
        related: of.film ? [{ message: `film ${of.film.words}`, place: of.film.place }] : [],
        fixes: widened(plan, of),
      };
    }
  },
};
