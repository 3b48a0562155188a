/**
 * Class D: pigments nobody measured for us, drawn from relatives: a weighted sum, moved along the wavelengths, made
 * stronger or weaker. Every line is an estimate from the trade's description of the colour, and says so.
 */
import { BANDS, type Spectrum, STEP } from '../../src/optics/wavelengths.ts';
import { scatteringLimit } from './expectations.ts';
import rows from './kin.json' with { type: 'json' };
import type { Derived } from './table.ts';
import { strengthResidual } from './uncertain.ts';

/**
 * One row of `kin.json`. Absorption and scattering of the kin are multiplied, its bands moved by `shift` nm (positive
 * towards red); `and` adds so much of another pigment as it is. `why` where the trade's words need explaining.
 */
export interface KinRow {
  readonly id: string;
  readonly kin: string;
  readonly absorption: number;
  readonly scattering: number;
  readonly shift?: number;
  readonly and?: readonly [id: string, share: number];
  readonly why?: string;
}

const ROWS = rows as unknown as readonly KinRow[];

export const STRENGTH_FACTOR = 2;

/** Class D for every row of `kin.json`. `off`: ΔE00 to expect of a colour drawn from a relative, its strength apart. */
export function kinPigments(known: readonly Derived[], off: number): Derived[] {
  const made: Derived[] = [];
  for (const row of ROWS) made.push(fromKin(row, [...known, ...made], off));
  return made;
}

type Known = Pick<Derived, 'id' | 'a' | 's'>;

/**
 * A pigment drawn from a relative among the `known`; throws where the relative is not one of them. `limit`: the most it
 * may scatter, per µm.
 */
export function fromKin(
  row: KinRow,
  known: readonly Known[],
  off: number,
  // a clear sort of an opaque kin scatters no more than its class lets it
  limit = scatteringLimit(row.id),
): Derived {
  const find = (name: string): Known => {
    const kin = known.find((p) => p.id === name);
    if (!kin) throw new Error(`${row.id}: its kin ${name} is not known yet`);
    return kin;
  };
  const kin = find(row.kin);
  const other = row.and && find(row.and[0]);
  const share = row.and?.[1] ?? 0;
  const a = moved(kin.a, row.absorption, row.shift ?? 0).map((v, b) => v + share * (other?.a[b] ?? 0));
  const s = moved(kin.s, row.scattering, row.shift ?? 0).map((v, b) => v + share * (other?.s[b] ?? 0));
  const mean = s.reduce((sum, v) => sum + v / BANDS, 0);
  const pair = { a, s: s.map((v) => v * Math.min(1, limit / mean)) };
  return {
    id: row.id,
    class: 'D',
    ...pair,
    residual: Math.hypot(off, strengthResidual(pair, find('PW1'), STRENGTH_FACTOR)),
    source: 'kinship',
    note: `From ${row.kin}${row.and ? ` and ${row.and[0]}` : ''}.`,
  };
}

/** Interpolates ln of the spectrum at λ − shift; the ends are held. */
export function moved(values: Spectrum, times: number, shift: number): Spectrum {
  return Float64Array.from({ length: BANDS }, (_, b) => {
    const at = Math.min(BANDS - 1, Math.max(0, b - shift / STEP));
    const i = Math.min(BANDS - 2, Math.floor(at));
    const f = at - i;
    return (
      times *
      Math.exp((1 - f) * Math.log(Math.max(1e-5, values[i]!)) + f * Math.log(Math.max(1e-5, values[i + 1]!)))
    );
  });
}
