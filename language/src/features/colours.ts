/** Colours to be shown as boxes: those written, and those predicted for paints, mixes and layers. */
import { cssOf, parseColour, toScreen } from '../optics/css.ts';
import type { ColourValue, Place, Plan } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';
import { masstone } from './single.ts';

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

const word = (place: Place, text: string): Place => ({ ...place, end: place.start + text.length });

const predicted = (place: Place, hex: string): ColourBox => ({ place, rgb: rgbOf(hex), written: false });

/** Predicted boxes stand on the word that declares: a paint's or mix's masstone, a layer's colour on the first of its areas. */
export function colourBoxes(plan: Plan, study: Study): ColourBox[] {
  const literal = written(plan).flatMap((c): ColourBox[] => {
    const lab = parseColour(c.css);
    return lab ? [{ place: c.place, rgb: rgbOf(toScreen(lab).hex), written: true }] : [];
  });
  const masstones = [
    ...plan.paints.map((paint) => ({
      at: word(paint.place, 'paint'),
      use: { ...paint, is: { kind: 'paint', paint } as const },
    })),
    ...plan.mixes.map((mix) => ({
      at: word(mix.place, 'mix'),
      use: { ...mix, is: { kind: 'mix', mix } as const },
    })),
  ].flatMap(({ at, use }): ColourBox[] => {
    const lab = masstone(study, use.name, { name: use.name, place: use.namePlace, is: use.is });
    return lab ? [predicted(at, toScreen(lab).hex)] : [];
  });
  const layers = study.layers.flatMap((l): ColourBox[] => {
    const colour = l.colours()[0];
    return colour && l.layer.name ? [predicted(l.layer.kindPlace, colour.hex)] : [];
  });
  return [...literal, ...masstones, ...layers];
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
