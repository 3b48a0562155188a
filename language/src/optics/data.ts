/** The shipped optical data: absorption and scattering of each pigment, how far they may be trusted, and on what they rest. */

import type { Coefficients } from './film.ts';
import table from './tables/pigments.json' with { type: 'json' };
import { BANDS, type Spectrum } from './wavelengths.ts';

/**
 * A: measured in oil. B: measured in another binder, rescaled by volume. C: measured as one film over four grounds, its
 * strength estimated against a measured neighbour. D: estimated by kinship.
 */
export type Confidence = 'A' | 'B' | 'C' | 'D';

/** Absorption and scattering of one pigment in oil, 400 to 700 nm by 10 nm, and how far to trust them. */
export interface OpticalData extends Coefficients {
  /** absorption per µm of pure pigment, 31 bands */
  readonly a: Spectrum;
  /** scattering per µm of pure pigment, 31 bands */
  readonly s: Spectrum;
  readonly confidence: Confidence;
  /** ΔE00 to expect of a colour that rests on this pigment alone, thickness and medium apart */
  readonly residual: number;
  /** where it comes from, in words fit to be printed */
  readonly basis: string;
}

interface Row {
  readonly id: string;
  readonly class: string;
  readonly residual: number;
  /** index into `sources` */
  readonly source: number;
  readonly note: string;
  /** thousandths of log10 of the value per µm, one a band */
  readonly a: readonly number[];
  readonly s: readonly number[];
}

const rows = new Map((table.pigments as readonly Row[]).map((row) => [row.id, row]));
const decoded = new Map<string, OpticalData>();

/** Ids of the pigments with optical data, in the table's order. */
export const pigmentsWithData = (): readonly string[] => [...rows.keys()];

const decode = (values: readonly number[]): Spectrum => {
  const out = new Float64Array(BANDS);
  for (let i = 0; i < BANDS; i++) out[i] = 10 ** (values[i]! / 1000);
  return out;
};

/**
 * Optical data of a pigment of the catalogue by its id (`PB29`, `PBr7 burnt-sienna`); undefined where there is none,
 * and the caller then says that the colour cannot be predicted.
 */
export function opticalData(pigmentId: string): OpticalData | undefined {
  const known = decoded.get(pigmentId);
  if (known) return known;
  const row = rows.get(pigmentId);
  if (!row) return undefined;
  const data: OpticalData = {
    a: decode(row.a),
    s: decode(row.s),
    confidence: row.class as Confidence,
    residual: row.residual,
    basis: `${(table.sources as readonly string[])[row.source]}${row.note ? ` ${row.note}` : ''}`,
  };
  decoded.set(pigmentId, data);
  return data;
}
