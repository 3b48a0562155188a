/** The grid every spectrum of this room lives on: 400 to 700 nm by 10 nm. */

export const BANDS = 31;
/** nm of the first and the last band */
export const FIRST = 400;
export const LAST = 700;
/** nm between bands */
export const STEP = 10;

/** nm of each band. */
export const wavelengths: readonly number[] = Array.from({ length: BANDS }, (_, i) => FIRST + STEP * i);

/** A spectrum on the grid: 31 values, one a band. */
export type Spectrum = Float64Array;

/** A new spectrum, the same value in every band. */
export const flat = (value: number): Spectrum => new Float64Array(BANDS).fill(value);
