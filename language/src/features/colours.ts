/** Colours to be shown as boxes: those written, and those predicted for paints, mixes and layers. */
import { cssOf, parseColour, toScreen } from '../optics/css.ts';
import type { ColourValue, Place, Plan } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';

export interface ColourBox {
  readonly place: Place;
  /** sRGB, 0 to 1 */
  readonly rgb: readonly [number, number, number];
  /** a colour written in the text, which a picker may change */
  readonly written: boolean;
}

const rgbOf = (hex: string): [number, number, number] =>
  [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255) as [number, number, number];

function written(plan: Plan): ColourValue[] {
  return [
    ...plan.mixes.flatMap((m) => (m.target ? [m.target] : [])),
    ...plan.targets.flatMap((t) => (t.colour ? [t.colour] : [])),
    ...plan.pigments.flatMap((p) => p.swatches.map((s) => s.colour)),
    ...plan.layers.flatMap((l) => [
      ...l.measured.map((m) => m.colour),
      ...(l.colour?.kind === 'value' ? [l.colour.value] : []),
    ]),
  ];
}

/** Predicted boxes stand on the name of a layer: its colour on the first of its areas. */
export function colourBoxes(plan: Plan, study: Study): ColourBox[] {
  const literal = written(plan).flatMap((c): ColourBox[] => {
    const lab = parseColour(c.css);
    return lab ? [{ place: c.place, rgb: rgbOf(toScreen(lab).hex), written: true }] : [];
  });
  const layers = study.layers.flatMap((l): ColourBox[] => {
    const colour = l.colours()[0];
    return colour && l.layer.name
      ? [{ place: l.layer.namePlace, rgb: rgbOf(colour.hex), written: false }]
      : [];
  });
  return [...literal, ...layers];
}

const two = (v: number) =>
  Math.round(Math.min(1, Math.max(0, v)) * 255)
    .toString(16)
    .padStart(2, '0');

/** A picked colour as it may be written: hex, and CIELAB. Empty for a box that is not written. */
export function presentations(rgb: readonly [number, number, number]): string[] {
  const hex = `#${rgb.map(two).join('')}`;
  const lab = parseColour(hex);
  return lab ? [hex, cssOf(lab)] : [hex];
}
