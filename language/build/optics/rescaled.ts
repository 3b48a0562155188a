/**
 * Class B: absorption and scattering measured in an acrylic binder relative to titanium white, rescaled by volume to pure
 * pigment. The published K and S are those of Kubelka and Munk; what they stand for are the masstone and the tints they
 * were read from, so those are what the coefficients here are fitted to. The makers' pigment volumes are not published;
 * the shares below are ours for artists' acrylics (strong organic colours hold little, oxides and earths more), and one
 * common factor draws them towards the two pigments measured in both binders.
 */
import { BANDS, type Spectrum, wavelengths } from '../../src/optics/wavelengths.ts';
import { readTable } from './csv.ts';
import { estimate, type Pair, type Tint } from './estimate.ts';
import { geometricMean } from './evaluate.ts';
import { expected } from './expectations.ts';
import { spectrum } from './films.ts';
import { kubelkaMunk } from './kubelka-munk.ts';
import { hidingScattering } from './measured.ts';
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
  ['dioxazine-violet', 'PV23', 0.08],
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
/** Parts of paint in a hundred of the mixture with white whose colours the published coefficients stand for. */
const TINTS = [0.5, 0.2, 0.05];

export interface Rescaled {
  readonly pigments: readonly Derived[];
  /** masstone and tints of each, for those that charts show too */
  readonly tints: ReadonlyMap<string, readonly Tint[]>;
  /** factor on the strengths that the pigments measured in both binders ask for */
  readonly common: number;
}

export function rescaledPigments(csv: string, measured: readonly Derived[]): Rescaled {
  const rows = readTable(csv);
  const find = (name: string, quantity: string): Spectrum => {
    const row = rows.find((r) => r.pigment === name && r.quantity === quantity);
    if (!row) throw new Error(`no ${quantity} of ${name}`);
    return spectrum(row, `${quantity} of ${name}`);
  };
  const [whiteRow, , whiteShare] = ROWS[0]!;
  // The table is relative to the white at every wavelength; rutile itself scatters about as 1/λ, as lead white here does.
  const level = hidingScattering('PW6');
  const whiteS = Float64Array.from(wavelengths, (nm) => (level * 550) / nm);
  const [whiteK, whiteKS] = [find(whiteRow, 'K'), find(whiteRow, 'S')];
  const white: Pair = {
    s: whiteS,
    // K/S of an endless film over its a/s is near 3 for so little absorption.
    a: Float64Array.from(whiteS, (s, b) => (s * whiteK[b]!) / whiteKS[b]! / 3),
  };
  const tintsOf = (row: string, share: number): Tint[] => {
    const [k, s] = [find(row, 'K'), find(row, 'S')];
    const tint = (part: number): Tint => ({
      kind: 'tint',
      part,
      share: part * share,
      ...(part < 1 ? { white: { ...white, share: (1 - part) * whiteShare } } : {}),
      seen: Float64Array.from({ length: BANDS }, (_, b) =>
        // An endless film is one whose scattering is that of thousands.
        kubelkaMunk(
          1e4 * (part * k[b]! + (1 - part) * whiteK[b]!),
          1e4 * (part * s[b]! + (1 - part) * whiteKS[b]!),
          0,
        ),
      ),
    });
    return [tint(1), ...TINTS.map(tint)];
  };
  const fitted = (row: string, id: string, share: number): Pair =>
    estimate([], tintsOf(row, share), expected(id), TINT_NOISE);
  const peak = (values: Spectrum) => Math.max(...values);
  // The shares themselves count as one voice beside the two pigments.
  const common = geometricMean([
    1,
    ...ROWS.flatMap(([row, id, share]) => {
      const known = measured.find((m) => m.id === id);
      return known ? [peak(known.a) / peak(fitted(row, id, share).a)] : [];
    }),
  ]);
  const lead = measured.find((m) => m.id === 'PW1')!;
  const pigments = ROWS.filter(([, id]) => !measured.some((m) => m.id === id)).map(([row, id, share]) => {
    const pair = id === 'PW6' ? white : fitted(row, id, share / common);
    return {
      id,
      class: 'B' as const,
      ...pair,
      residual: strengthResidual(pair, lead, id === 'PW6' ? 1.2 : STRENGTH_FACTOR),
      source: 'okumura' as const,
      note: `From ${row}.`,
    };
  });
  const tints = new Map(ROWS.map(([row, id, share]) => [id, tintsOf(row, share / common)]));
  return { pigments, common, tints };
}

/** Standard deviation of a root of reflectance of the published coefficients. */
const TINT_NOISE = 0.02;
