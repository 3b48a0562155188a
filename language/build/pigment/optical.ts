/**
 * An optical row for a new pigment without the raw measurements: drawn from a relative, or from swatches somebody measured.
 */
import type { Transparency } from '../../src/materials/types.ts';
import { toLab, toXyz } from '../../src/optics/cie.ts';
import { type OpticalData, opticalData, pigmentsWithData } from '../../src/optics/data.ts';
import { GLOSS } from '../../src/optics/surface.ts';
import { calibrate, type SwatchColour } from '../../src/optics/swatches.ts';
import { BANDS } from '../../src/optics/wavelengths.ts';
import { scatteringLimit } from '../optics/expectations.ts';
import judged from '../optics/judged.json' with { type: 'json' };
import { fromKin as drawn, type KinRow } from '../optics/kinship.ts';
import { tableRow, thousandths } from '../optics/table.ts';

/** Thrown with words for whoever wrote the file. */
export class Unfit extends Error {}

/** A line of `kin.json`, which here has to say on what it rests. */
export type Kin = Omit<KinRow, 'id'> & { readonly why: string };

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

const number = (value: unknown, what: string, low: number, high: number): number => {
  if (typeof value !== 'number' || !(value >= low && value <= high))
    throw new Unfit(`${what}: a number from ${low} to ${high} is wanted, found ${JSON.stringify(value)}.`);
  return value;
};

const named = (what: string, id: string): OpticalData => {
  const data = opticalData(id);
  if (!data) throw new Unfit(`${what}: ‘${id}’ has no optical row. Name a pigment that has one.`);
  return data;
};

/** ΔE00 to expect of a colour drawn from a relative, as the last derivation found it. */
const OFF = judged.classes.find((c) => c.class === 'D')!.twoInThree;

/** The row that deriving the table anew makes of the same line of `kin.json`. */
export function fromKin(id: string, kin: Kin, transparency: Transparency): OpticsRow {
  named('optics.kin', kin.kin);
  if (!kin.why) throw new Unfit('optics.why: say on what the estimate rests.');
  number(kin.absorption, 'optics.absorption', 0.01, 20);
  number(kin.scattering, 'optics.scattering', 0.01, 20);
  number(kin.shift ?? 0, 'optics.shift (nm)', -100, 100);
  if (kin.and) {
    named('optics.and', kin.and[0]);
    number(kin.and[1], 'optics.and (share)', 0.001, 20);
  }
  const known = pigmentsWithData().map((name) => ({ id: name, ...opticalData(name)! }));
  return tableRow(drawn({ id, ...kin }, known, OFF, scatteringLimit(id, transparency)));
}

/** `volume`: pigment over the dry volume of the paint the swatches were made with. */
export function fromSwatches(
  table: Table,
  id: string,
  measured: Measured,
  volume: number,
): { readonly row: OpticsRow; readonly sources: readonly string[] } {
  if (!measured.source) throw new Unfit('optics.source: say who measured the swatches, and how.');
  const prior = measured.like === undefined ? undefined : named('optics.like', measured.like);
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
  return {
    row: {
      id,
      class: data.confidence,
      residual: Math.round(10 * data.residual) / 10,
      source: sources.indexOf(text),
      note: measured.source,
      a: thousandths(data.a),
      s: thousandths(data.s),
    },
    sources,
  };
}
