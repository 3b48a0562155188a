/** The shape of the shipped table, and its writing. */
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';

export const SOURCES = {
  'oil-films': 'Measured in oil over white and black (CC0 data: Geldof et al., Heritage Science 6:17, 2018).',
  okumura:
    'Measured in an acrylic binder (Okumura, thesis, Rochester Institute of Technology, 2005), rescaled by volume.',
  'four-grounds':
    'Films over four grounds (CC BY 4.0 data: Deborah, WHISPERS 2022, doi 10.1109/WHISPERS56178.2022.9955067; coefficients derived); strength estimated.',
  kinship: 'Estimated from related pigments (assumption).',
} as const;

export interface Derived {
  readonly id: string;
  readonly class: 'A' | 'B' | 'C' | 'D';
  /** per µm of pure pigment */
  readonly a: Spectrum;
  readonly s: Spectrum;
  /** ΔE00 */
  readonly residual: number;
  readonly source: keyof typeof SOURCES;
  readonly note: string;
}

const LEAST = 1e-5;
/** A column as the table holds it: thousandths of log10. */
export const thousandths = (values: Spectrum): number[] =>
  Array.from(values, (v) => Math.round(1000 * Math.log10(Math.max(LEAST, v))));

/** One pigment as a row of the table. */
export function tableRow(p: Derived) {
  if (p.a.length !== BANDS || ![...p.a, ...p.s].every(Number.isFinite))
    throw new Error(`${p.id}: not a number`);
  return {
    id: p.id,
    class: p.class,
    residual: Math.round(p.residual * 10) / 10,
    source: Object.keys(SOURCES).indexOf(p.source),
    note: p.note,
    a: thousandths(p.a),
    s: thousandths(p.s),
  };
}

/** One pigment a line, so that a difference between two derivations can be read. */
export function tableText(pigments: readonly Derived[]): string {
  const rows = pigments.map((p) => JSON.stringify(tableRow(p)));
  return `{\n"unit": "thousandths of log10 of absorption (a) and reduced scattering (s) per micrometre of pure pigment, 400 to 700 nm by 10 nm",\n"sources": ${JSON.stringify(Object.values(SOURCES))},\n"pigments": [\n${rows.join(',\n')}\n]\n}\n`;
}
