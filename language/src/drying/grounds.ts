/** Drying of layers that are named by their material: grounds, sizes, leaf. Days. */
import { type Interval, scale } from '../materials/interval.ts';
import type { GroundMaterial } from '../materials/types.ts';
import { OPEN } from './settings.ts';
import type { Drying } from './times.ts';

/** Days to touch-dry of water-borne grounds and sizes: hours (common practice). */
const WATER_BORNE: Interval = { low: 0.02, likely: 0.1, high: 0.5 };

/**
 * Days until another coat of the same water-borne ground, size or paint: as soon as the one before has lost its wet shine,
 * an hour or two, or the next day in the cold (common practice: eight coats of chalk in glue take a day or two).
 */
const NEXT_COAT: Interval = { low: 0.04, likely: 0.15, high: 1 };

/** From the table's days until it may be painted on: least, usual, best. */
export function dryGround(material: GroundMaterial): Drying {
  const [least, usual, best] = [material.ready.least, material.ready.usual, material.ready.best].sort(
    (a, b) => a - b,
  );
  const ready: Interval = { low: least!, likely: usual!, high: best! };
  const most: Interval = material.kind === 'oil' ? scale(ready, 1 / 1.5) : WATER_BORNE;
  const touchDry: Interval = {
    low: Math.min(most.low, ready.low),
    likely: Math.min(most.likely, ready.likely),
    high: Math.min(most.high, ready.high),
  };
  const nextCoat =
    material.kind === 'oil'
      ? undefined
      : {
          low: Math.min(NEXT_COAT.low, ready.low),
          likely: Math.min(NEXT_COAT.likely, ready.likely),
          high: Math.min(NEXT_COAT.high, ready.high),
        };
  return {
    ...(nextCoat ? { nextCoat } : {}),
    open: {
      low: touchDry.low * OPEN.low,
      likely: touchDry.likely * OPEN.likely,
      high: touchDry.high * OPEN.high,
    },
    touchDry,
    ready,
    firm: ready,
  };
}

/** An oil paint laid as a ground: not painted on before an oil ground of the table would be. */
export function asGround(drying: Drying, oilGround: GroundMaterial | undefined): Drying {
  if (!oilGround) return drying;
  const { ready } = dryGround(oilGround);
  const later = (x: Interval): Interval => ({
    low: Math.max(x.low, ready.low),
    likely: Math.max(x.likely, ready.likely),
    high: Math.max(x.high, ready.high),
  });
  return { ...drying, ready: later(drying.ready), firm: later(drying.firm) };
}
