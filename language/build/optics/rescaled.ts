/**
 * Class B: K and S measured in an acrylic binder relative to titanium white, rescaled by volume to pure pigment. The
 * makers' pigment volumes are not published; the shares below are ours for artists' acrylics (strong organic colours
 * hold little, oxides and earths more), and one common factor draws them towards the two pigments measured in both binders.
 */
import { BANDS, type Spectrum, wavelengths } from '../../src/optics/wavelengths.ts';
import { readTable } from './csv.ts';
import { geometricMean } from './evaluate.ts';
import { spectrum } from './films.ts';
import { WHITE_S } from './measured.ts';
import type { Derived } from './table.ts';
import { strengthResidual } from './uncertain.ts';

/** row in the published table → id, pigment volume over dry volume of the acrylic paint (assumption) */
const ROWS: readonly (readonly [row: string, id: string, share: number])[] = [
  ['titanium-white', 'PW6', 0.15],
  ['carbon-black', 'PBk7', 0.08],
  ['cobalt-blue', 'PB28', 0.15],
  ['chromium-oxide-green', 'PG17', 0.2],
  ['quinacridone-magenta', 'PR122', 0.08],
  ['diarylide-yellow', 'PY83', 0.08],
  ['phthalo-blue', 'PB15:3', 0.08],
  ['arylide-yellow-opaque', 'PY74', 0.12],
  ['red-iron-oxide', 'PR101', 0.15],
  ['phthalo-green', 'PG7', 0.08],
  ['pyrrole-red', 'PR254', 0.1],
  ['yellow-ochre', 'PY43', 0.2],
  ['ultramarine', 'PB29', 0.25],
  ['dioxazine-violet', 'PV23', 0.06],
  ['azomethine-green-gold', 'PY129', 0.08],
  ['cerulean-blue', 'PB36', 0.15],
  ['quinacridone-crimson', 'PV19', 0.08],
  ['raw-umber', 'PBr7 raw-umber', 0.2],
  ['burnt-sienna', 'PBr7 burnt-sienna', 0.2],
  ['burnt-umber', 'PBr7 burnt-umber', 0.2],
  ['indanthrone-blue', 'PB60', 0.08],
  ['naphthol-red', 'PR170', 0.1],
  ['raw-sienna', 'PBr7 raw-sienna', 0.2],
];

/** Strength may be off by this factor: what the shares and the two common pigments scatter by. */
export const STRENGTH_FACTOR = 1.5;

export function rescaledPigments(
  csv: string,
  measured: readonly Derived[],
): { pigments: Derived[]; common: number } {
  const rows = readTable(csv);
  const find = (name: string, quantity: string): Spectrum => {
    const row = rows.find((r) => r.pigment === name && r.quantity === quantity);
    if (!row) throw new Error(`no ${quantity} of ${name}`);
    return spectrum(row, `${quantity} of ${name}`);
  };
  const white = ROWS[0]!;
  // The table is relative to the white at every wavelength; rutile itself scatters about as 1/λ, as lead white here does.
  const unit = Float64Array.from(wavelengths, (nm) => (WHITE_S.PW6 * white[2] * 550) / nm);
  const scaled = (values: Spectrum, share: number, common: number) =>
    Float64Array.from({ length: BANDS }, (_, b) => (values[b]! * unit[b]! * common) / share);
  const peak = (values: Spectrum) => Math.max(...values);
  // The shares themselves count as one voice beside the two pigments.
  const common = geometricMean([
    1,
    ...ROWS.flatMap(([row, id, share]) => {
      const known = measured.find((m) => m.id === id);
      return known ? [peak(known.k) / peak(scaled(find(row, 'K'), share, 1))] : [];
    }),
  ]);
  const lead = measured.find((m) => m.id === 'PW1')!;
  const pigments = ROWS.filter(([, id]) => !measured.some((m) => m.id === id)).map(([row, id, share]) => {
    const factor = id === 'PW6' ? 1 : common;
    const pair = { k: scaled(find(row, 'K'), share, factor), s: scaled(find(row, 'S'), share, factor) };
    return {
      id,
      class: 'B' as const,
      ...pair,
      residual: Math.hypot(2, strengthResidual(pair, lead, id === 'PW6' ? 1.2 : STRENGTH_FACTOR)),
      source: 'okumura' as const,
      note: '',
    };
  });
  return { pigments, common };
}
