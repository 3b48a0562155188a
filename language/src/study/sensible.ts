/** Figures as JSON shows them: with the digits they deserve, without the last bits of the machine that computed them. */

/** Significant digits kept of every figure, so that the text does not hang on the machine. */
const DIGITS = 6;

/** Decimals beyond which a figure is noise in any unit of the JSON: an L* of 5e-14 is 0. */
const DECIMALS = 6;

/** Decimals of coordinates and differences of colour, whose radius is seldom below 1. */
const COLOUR_DECIMALS = 3;
const COLOUR = new Set(['lab', 'radius', 'deltaE00', 'roundingLoss', 'metamerism']);

const kept = (value: number, decimals: number): number | null =>
  // adding 0 makes a negative zero a plain one
  Number.isFinite(value) ? Number(Number(value.toPrecision(DIGITS)).toFixed(decimals)) + 0 : null;

/** The same value with figures rounded; what is not finite becomes null rather than break a reader. */
export function sensible<T>(value: T, decimals = DECIMALS): T {
  if (typeof value === 'number') return kept(value, decimals) as T;
  if (Array.isArray(value)) return value.map((v) => sensible(v, decimals)) as T;
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [
        key,
        sensible(inner, COLOUR.has(key) ? COLOUR_DECIMALS : decimals),
      ]),
    ) as T;
  return value;
}
