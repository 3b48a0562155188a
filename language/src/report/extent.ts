/** How much of a painting its drawings and tables of colours show. */
export interface Extent {
  readonly areas: number;
  /** of an area, counted from above */
  readonly layers: number;
}

export const WHOLE: Extent = { areas: Number.POSITIVE_INFINITY, layers: Number.POSITIVE_INFINITY };

/** What a person can look through beside a text, and an editor can hold while it is typed. */
export const BESIDE_TEXT: Extent = { areas: 12, layers: 30 };

/** Where all of it is to be seen. */
export const IN_FULL = '‘paintplan report PLAN’ writes the report with all of it.';

/** What an extent leaves out of a painting, in words; undefined where it is drawn whole. */
export function notDrawn(areas: number, layers: number, extent: Extent): string | undefined {
  const kept = [
    ...(areas > extent.areas ? [`the first ${extent.areas} of ${areas} areas`] : []),
    ...(layers > extent.layers
      ? [`of an area the upper ${extent.layers} layers (there are up to ${layers})`]
      : []),
  ];
  return kept.length > 0 ? `Drawn: ${kept.join(', ')}. ${IN_FULL}` : undefined;
}
