/**
 * An optical row for a new pigment without the raw measurements: drawn from a relative, or from swatches somebody measured.
 * Columns are taken by the table as it stands: absorption first, scattering second, thousandths of log10 per µm.
 */
import { toLab, toXyz } from '../../src/optics/cie.ts';
import { opticalData } from '../../src/optics/data.ts';
import { GLOSS } from '../../src/optics/surface.ts';
import { calibrate, type SwatchColour } from '../../src/optics/swatches.ts';
import { BANDS, STEP } from '../../src/optics/wavelengths.ts';

/** Thrown with words for whoever wrote the file. */
export class Unfit extends Error {}

export interface Kin {
  readonly kin: string;
  /** its absorption and scattering are multiplied */
  readonly absorption: number;
  readonly scattering: number;
  /** nm, positive towards red */
  readonly shift?: number;
  readonly why: string;
}

/** `reflectance`: 31 values from 0 to 1, 400 to 700 nm by 10 nm, mirrored light left out. */
export type Swatch = { readonly reflectance: readonly number[] } & (
  | { readonly kind: 'masstone' }
  | { readonly kind: 'tint'; readonly parts: number }
  | { readonly kind: 'over-black' | 'over-white'; readonly thickness: number }
);

export interface Measured {
  readonly swatches: readonly Swatch[];
  /** a pigment whose curve leads where the swatches leave it open */
  readonly like?: string;
  /** who measured them and how */
  readonly source: string;
}

export type OpticsRow = Readonly<Record<string, unknown>>;
export interface Table {
  readonly unit: string;
  readonly sources: readonly string[];
  readonly pigments: readonly OpticsRow[];
}

/** Names of the two columns, absorption and scattering. */
function columns(table: Table): readonly [string, string] {
  const [a, s] = Object.entries(table.pigments[0] ?? {}).flatMap(([key, v]) =>
    Array.isArray(v) ? [key] : [],
  );
  if (!a || !s) throw new Unfit('The optical table has no row to take its columns from.');
  return [a, s];
}

const number = (value: unknown, what: string, low: number, high: number): number => {
  if (typeof value !== 'number' || !(value >= low && value <= high))
    throw new Unfit(`${what}: a number from ${low} to ${high} is wanted, found ${JSON.stringify(value)}.`);
  return value;
};

function moved(values: readonly number[], times: number, shift: number): number[] {
  return Array.from({ length: BANDS }, (_, b) => {
    const at = Math.min(BANDS - 1, Math.max(0, b - shift / STEP));
    const i = Math.min(BANDS - 2, Math.floor(at));
    const between = values[i]! + (at - i) * (values[i + 1]! - values[i]!);
    return Math.max(-5000, Math.round(between + 1000 * Math.log10(times)));
  });
}

export function fromKin(table: Table, id: string, kin: Kin): OpticsRow {
  const [a, s] = columns(table);
  const row = table.pigments.find((r) => r.id === kin.kin);
  if (!row) throw new Unfit(`optics.kin: ‘${kin.kin}’ has no optical row. Name a pigment that has one.`);
  if (!kin.why) throw new Unfit('optics.why: say on what the estimate rests.');
  const absorption = number(kin.absorption, 'optics.absorption', 0.01, 20);
  const scattering = number(kin.scattering, 'optics.scattering', 0.01, 20);
  const shift = number(kin.shift ?? 0, 'optics.shift (nm)', -100, 100);
  return {
    id,
    class: 'D',
    // no estimate is surer than its relative
    residual: Math.max(8, Number(row.residual)),
    source: table.sources.findIndex((text) => text.startsWith('Estimated from related')),
    note: `From ${kin.kin}.`,
    [a]: moved(row[a] as number[], absorption, shift),
    [s]: moved(row[s] as number[], scattering, shift),
  };
}

/** `volume`: pigment over the dry volume of the paint the swatches were made with. */
export function fromSwatches(
  table: Table,
  id: string,
  measured: Measured,
  volume: number,
): { readonly row: OpticsRow; readonly sources: readonly string[] } {
  const names = columns(table);
  if (!measured.source) throw new Unfit('optics.source: say who measured the swatches, and how.');
  const prior = measured.like === undefined ? undefined : opticalData(measured.like);
  if (measured.like !== undefined && !prior)
    throw new Unfit(`optics.like: ‘${measured.like}’ has no optical row. Name a pigment that has one.`);
  const white = opticalData('PW6')!;
  const looks = measured.swatches.map((swatch, i): SwatchColour => {
    const what = `optics.swatches[${i}]`;
    const { reflectance } = swatch;
    if (!Array.isArray(reflectance) || reflectance.length !== BANDS)
      throw new Unfit(`${what}.reflectance: ${BANDS} values are wanted, 400 to 700 nm by 10 nm.`);
    for (const r of reflectance) number(r, `${what}.reflectance`, 0, 1);
    const seen = Float64Array.from(reflectance);
    const as = { lab: toLab(toXyz(seen)), reflectance: seen };
    if (swatch.kind === 'masstone') return { kind: swatch.kind, ...as };
    if (swatch.kind === 'tint')
      return {
        kind: swatch.kind,
        ...as,
        parts: number(swatch.parts, `${what}.parts`, 0.1, 1000),
        white: { optical: white, fraction: 0.43 },
      };
    if (swatch.kind === 'over-black' || swatch.kind === 'over-white')
      return {
        kind: swatch.kind,
        ...as,
        thickness: number(swatch.thickness, `${what}.thickness (µm)`, 1, 1000),
      };
    throw new Unfit(`${what}.kind: masstone, tint, over-black or over-white.`);
  });
  const { data, inconsistent } = calibrate(prior, volume, looks, GLOSS);
  if (inconsistent) throw new Unfit(`optics.swatches: ${inconsistent}`);
  if (!data) throw new Unfit('optics.swatches: at least one swatch is wanted.');
  const text = 'Measured swatches.';
  const sources = table.sources.includes(text) ? table.sources : [...table.sources, text];
  const figures = data as unknown as Readonly<Record<string, Float64Array>>;
  const column = (name: string) =>
    Array.from(figures[name]!, (v) => Math.round(1000 * Math.log10(Math.max(1e-5, v))));
  return {
    row: {
      id,
      class: data.confidence,
      residual: Math.round(10 * data.residual) / 10,
      source: sources.indexOf(text),
      note: measured.source,
      ...Object.fromEntries(names.map((name) => [name, column(name)])),
    },
    sources,
  };
}
