/**
 * Class C: one film over four grounds gives K·X and S·X, its hue and its balance of absorbing and scattering, but not
 * how much pigment lay in it. The strength is set against a neighbour already known: either the peak of K or S at 650 nm
 * (bodies with a high index, where absorption saturates) is a stated multiple of the neighbour's.
 *
 * These films leave a gauge open: light mirrored by the surface cannot be told from scattering. Bone black, measured in
 * oil as well, fixes it: what its endless film reflects here beyond what it does there is taken off every endless film.
 */
import { opaqueReflectance } from '../../src/optics/film.ts';
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import { readTable } from './csv.ts';
import { spectrum } from './films.ts';
import type { Derived } from './table.ts';
import { strengthResidual } from './uncertain.ts';

type Row = readonly [row: string, id: string, by: 'K' | 'S', neighbour: string, times: number];

/** The multiples are ours: handbook tinting strengths put in order, refractive indices for the scattering. */
const ROWS: readonly Row[] = [
  ['cadmium-yellow-lemon', 'PY35', 'S', 'PY34', 1],
  ['cadmium-yellow-medium', 'PY37', 'S', 'PY34', 1],
  ['cadmium-orange', 'PO20', 'S', 'PR106', 1.2],
  ['cadmium-red-light', 'PR108 light', 'S', 'PR106', 1.2],
  ['cadmium-red-medium', 'PR108', 'S', 'PR106', 1.2],
  ['cadmium-red-deep', 'PR108 deep', 'S', 'PR106', 1.2],
  ['alizarin-crimson', 'PR83', 'K', 'NR4', 0.8],
  ['madder-lake', 'NR9', 'K', 'NR4', 0.4],
  ['naples-yellow-genuine', 'PY41', 'S', 'PW1', 1.5],
  ['naples-yellow-genuine-light', 'PY41 light', 'S', 'PW1', 1.5],
  ['naples-yellow-imitation', 'PBr24', 'S', 'PW6', 0.5],
  ['aureolin', 'PY40', 'K', 'PY43', 0.8],
  ['bismuth-vanadate-yellow', 'PY184', 'S', 'PY34', 1],
  ['nickel-titanium-yellow', 'PY53', 'S', 'PW6', 0.5],
  ['azurite', 'PB30', 'K', 'PB28', 0.2],
  ['smalt', 'PB32', 'K', 'PB28', 0.12],
  ['lapis-lazuli', 'PB29 natural', 'K', 'PB29', 0.5],
  ['indigo', 'NB1', 'K', 'PB27', 0.5],
  ['cobalt-violet', 'PV14', 'K', 'PB28', 0.4],
  ['ultramarine-violet', 'PV15', 'K', 'PB29', 0.5],
  ['cobalt-turquoise', 'PB36 turquoise', 'K', 'PB36', 1],
  ['malachite', 'PG39', 'K', 'PB28', 0.12],
  ['verdigris', 'PG20', 'K', 'PB28', 0.12],
  ['cobalt-green', 'PG50', 'S', 'PR101', 1],
  ['green-earth', 'PG23', 'K', 'PBr7 raw-sienna', 0.3],
  ['green-earth-bohemian', 'PG23 bohemian', 'K', 'PBr7 raw-sienna', 0.3],
  ['orpiment', 'PY39', 'S', 'PY34', 0.8],
  ['realgar', 'PR39', 'S', 'PY34', 0.8],
  ['van-dyke-brown', 'NBr8', 'K', 'PBk9', 0.6],
  ['vine-black', 'PBk8', 'K', 'PBk9', 1.2],
  ['iron-oxide-yellow', 'PY42', 'S', 'PR101', 0.8],
  ['iron-oxide-red-light', 'PR101 light', 'S', 'PR101', 1],
  ['iron-oxide-red-dark', 'PR101 dark', 'S', 'PR101', 1],
  ['caput-mortuum', 'PR101 violet', 'S', 'PR101', 0.8],
  ['transparent-iron-oxide-red', 'PR101 transparent', 'K', 'PR101', 1],
  ['transparent-iron-oxide-yellow', 'PY42 transparent', 'K', 'PY43', 1.2],
  ['iron-oxide-brown', 'PBr6', 'S', 'PR101', 0.8],
  ['red-ochre', 'PR102', 'S', 'PR101', 0.5],
  ['phthalo-blue-red-shade', 'PB15:1', 'K', 'PB15:3', 1],
  ['phthalo-green-yellow-shade', 'PG36', 'K', 'PG7', 0.7],
  ['aniline-black', 'PBk1', 'K', 'PBk7', 0.6],
  ['hansa-yellow', 'PY3', 'K', 'PY74', 0.8],
];

/** Strength may be off by this factor. */
const STRENGTH_FACTOR = 1.8;
const AT_650 = 25;
/** Darkest endless film the subtraction may leave: what the blackest measured oil paints show. */
const LEAST_OPAQUE = 0.003;

export function fourGroundsPigments(csv: string, known: readonly Derived[]): Derived[] {
  const rows = readTable(csv);
  const find = (name: string, quantity: string): Spectrum => {
    const row = rows.find((r) => r.pigment === name && r.quantity === quantity);
    if (!row) throw new Error(`no ${quantity} of ${name}`);
    return spectrum(row, `${quantity} of ${name}`);
  };
  const lead = known.find((p) => p.id === 'PW1')!;
  const black = known.find((p) => p.id === 'PBk9')!;
  const [blackK, blackS] = [find('ivory-black', 'KX'), find('ivory-black', 'SX')];
  const mirrored = Float64Array.from({ length: BANDS }, (_, b) =>
    Math.max(0, opaqueReflectance(blackK[b]!, blackS[b]!) - opaqueReflectance(black.k[b]!, black.s[b]!)),
  );
  /** S·X that goes with K·X once the mirrored light is off the endless film. */
  const cleared = (kx: Spectrum, sx: Spectrum): Spectrum =>
    Float64Array.from({ length: BANDS }, (_, b) => {
      const r = Math.max(
        LEAST_OPAQUE,
        (opaqueReflectance(kx[b]!, sx[b]!) - mirrored[b]!) / (1 - mirrored[b]!),
      );
      return (kx[b]! * 2 * r) / (1 - r) ** 2;
    });
  return ROWS.map(([row, id, by, neighbour, times]) => {
    const kin = known.find((p) => p.id === neighbour);
    if (!kin) throw new Error(`${id}: its neighbour ${neighbour} is not known yet`);
    const kx = find(row, 'KX');
    const sx = cleared(kx, find(row, 'SX'));
    const measure = (k: Spectrum, s: Spectrum) => (by === 'K' ? Math.max(...k) : s[AT_650]!);
    const per = (times * measure(kin.k, kin.s)) / measure(kx, sx);
    const pair = {
      k: Float64Array.from({ length: BANDS }, (_, b) => kx[b]! * per),
      s: Float64Array.from({ length: BANDS }, (_, b) => sx[b]! * per),
    };
    return {
      id,
      class: 'C' as const,
      ...pair,
      residual: Math.hypot(2.5, strengthResidual(pair, lead, STRENGTH_FACTOR)),
      source: 'four-grounds' as const,
      note: `Strength set by ${by === 'K' ? 'the absorption peak' : 'scattering'} of ${neighbour}.`,
    };
  });
}
