/** What lies on an area so far, as light meets it. */
import type { Interval } from '../materials/interval.ts';
import type { Confidence } from '../optics/data.ts';
import type { Surface } from '../optics/surface.ts';
import type { Stack } from '../optics/transport.ts';

/** A state of an area: what light meets from above. */
export interface State {
  readonly stack: Stack;
  /** share of what each band sends back by which it may be off (one standard deviation, all bands together) */
  readonly doubt: Float64Array;
  /** ΔE00 to expect from the optical data alone */
  readonly residual: number;
  readonly face: Surface;
  readonly confidence: Confidence;
  readonly basis: readonly string[];
}

/** A film found for a lightness: µm of one coat, and what it comes to. */
export interface Solved {
  readonly coat: Interval;
  /** L* beneath, and with the likely film */
  readonly beneath: number;
  readonly lightness: number;
  readonly reached: boolean;
}
