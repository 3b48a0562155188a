/**
 * Class D: pigments nobody measured for us, drawn from relatives: a weighted sum, moved along the wavelengths, made
 * stronger or weaker. Every line is an estimate from the trade's description of the colour, and says so.
 */
import { BANDS, type Spectrum, STEP } from '../../src/optics/wavelengths.ts';
import type { Derived } from './table.ts';
import { strengthResidual } from './uncertain.ts';

/** absorption and scattering of the kin are multiplied by `k` and `s`; `shift` in nm, positive towards red */
type Row = readonly [id: string, kin: string, k: number, s: number, shift?: number];

const ROWS: readonly Row[] = [
  // The α form absorbs further from the red than the β form (bands about 615 and 695 nm against 645 and 720; from memory).
  ['PB15:1', 'PB15:3', 1, 1, -10],
  ['PW5', 'PW4', 1, 0.97],
  ['PW6 anatase', 'PW6', 0.7, 0.73],
  ['PW19', 'PW18', 1.5, 1],
  ['PW20', 'PW18', 1, 0.8],
  ['PW24', 'PW18', 0.5, 0.5],
  ['PW25', 'PW18', 0.8, 0.7],
  ['PY36', 'PY34', 0.5, 0.5, -20],
  ['PY32', 'PY34', 0.4, 0.5, -30],
  ['PY1', 'PY3', 1, 1, 6],
  ['PY65', 'PY74', 0.9, 1, 14],
  ['PY110', 'PY83', 0.8, 1, 4],
  ['PY139', 'PY83', 0.9, 1],
  ['PY150', 'PY129', 1.2, 0.5, -15],
  ['NY20', 'PY83', 0.2, 0.1, -10],
  ['NY24', 'PY83', 0.15, 0.05, -15],
  ['lead-tin-yellow-1', 'PY41 light', 0.9, 1.1, -5],
  ['lead-tin-yellow-2', 'PY41', 0.9, 1],
  ['NBk6', 'NBr8', 0.6, 0.3],
  ['PO73', 'PR254', 0.9, 1, -28],
  ['PR104', 'PR105', 1.3, 1.2, 8],
  ['PR112', 'PR170', 0.9, 1, -10],
  ['PR149', 'PR254', 1, 0.8, -6],
  ['PR177', 'PR83', 1.5, 0.7],
  ['PR179', 'PR83', 2, 1, 8],
  ['PR202', 'PR122', 1, 1, 4],
  ['PR264', 'PR254', 1.1, 0.5, 18],
  ['PR102 burnt', 'PR102', 1, 1],
  ['PV19 red', 'PV19', 0.8, 1, -14],
  ['PV16', 'PV14', 0.8, 1, -8],
  ['NR8', 'PR83', 0.7, 1],
  ['PB15:6', 'PB15:1', 1, 1, 4],
  ['PB31', 'PB28', 0.2, 0.4, 10],
  ['PB33', 'PB36 turquoise', 0.25, 0.25, -15],
  ['PB35', 'PB36', 0.9, 1.1],
  ['PB66', 'NB1', 1, 1],
  ['PB74', 'PB28', 0.4, 0.7],
  ['PG19', 'PG50', 0.5, 0.5],
  ['PBk6', 'PBk7', 1, 1],
  ['PBk10', 'PBk9', 0.6, 4],
  ['PBk11', 'PBk9', 1, 2],
  ['PW6 rutile', 'PW6', 1, 1],
  ['PW2', 'PW1', 1, 0.9],
  ['PW7', 'PW4', 1, 1.3],
  ['PW22', 'PW21', 1.2, 0.9],
  ['PW26', 'PW18', 1, 0.7],
  ['PW27', 'PW18', 0.8, 0.4],
  ['PY31', 'PY34', 0.25, 0.4, -35],
  ['PY46', 'PY41', 1, 1],
  ['lead-tin-antimony-yellow', 'PY41', 1, 1, 5],
  ['NY2', 'PY83', 0.2, 0.3, -25],
  ['NY13', 'PY83', 0.25, 0.2, -8],
  ['PY73', 'PY74', 0.9, 1, 4],
  ['PY97', 'PY3', 1, 0.8, 8],
  ['PY128', 'PY3', 0.9, 0.6, 2],
  ['PY138', 'PY3', 0.9, 1.2, 4],
  ['PY151', 'PY3', 0.9, 1.2, 6],
  ['PY153', 'PY83', 0.6, 0.4],
  ['PY154', 'PY3', 0.8, 1, 4],
  ['PY155', 'PY74', 0.9, 1, 2],
  ['PY175', 'PY3', 0.8, 0.8, -4],
  ['PY119', 'PY42', 0.8, 1, 15],
  ['PO21', 'PR105', 1, 1, -10],
  ['PO43', 'PR254', 0.9, 0.9, -20],
  ['PO48', 'PR101 transparent', 0.8, 0.6],
  ['PO49', 'PR101 transparent', 0.6, 0.5, -15],
  ['PO62', 'PR254', 0.7, 0.9, -45],
  ['PO64', 'PR254', 0.9, 0.9, -30],
  ['PO71', 'PR254', 0.9, 0.4, -35],
  ['PR9', 'PR170', 0.9, 0.8, -8],
  ['PR83:1', 'PR83', 1, 1],
  ['PR106 natural', 'PR106', 0.8, 0.8],
  ['PR113', 'PR108', 1, 1],
  ['PR168', 'PR254', 0.9, 0.8, -15],
  ['PR175', 'PR83', 1, 0.8, -10],
  ['PR176', 'PR83', 1.2, 0.8, -5],
  ['PR178', 'PR254', 1, 0.8, 2],
  ['PR187', 'PR83', 1.2, 0.8, -8],
  ['PR188', 'PR254', 0.9, 1, -6],
  ['PR206', 'PR83', 1.5, 0.8, 4],
  ['PR207', 'PV19', 0.8, 1, -18],
  ['PR209', 'PV19', 0.8, 1, -20],
  ['PR233', 'PR101', 0.1, 0.4, 5],
  ['PR242', 'PR254', 0.9, 1, -10],
  ['PR255', 'PR254', 0.9, 1.1, -10],
  ['PR259', 'PV15', 0.7, 1, -25],
  ['NR3', 'NR4', 0.8, 1],
  ['NR24', 'NR4', 0.5, 1, -5],
  ['NR25', 'NR4', 0.8, 1],
  ['NR31', 'PR101 transparent', 0.3, 0.1, 5],
  ['PV19 violet', 'PV19', 1.2, 1, 14],
  ['PV29', 'PR83', 2.2, 1, 20],
  ['PV37', 'PV23', 0.9, 1, -10],
  ['PV49', 'PV14', 0.7, 0.8],
  ['PB15', 'PB15:3', 1, 1],
  ['PB15:2', 'PB15:1', 1, 1],
  ['PB15:4', 'PB15:3', 1, 1],
  ['PB16', 'PB15:3', 0.8, 0.9, -6],
  ['PB72', 'PB28', 0.9, 1],
  ['PB73', 'PB28', 0.5, 0.8, -15],
  ['PB86', 'PB28', 0.8, 1.2, -5],
  ['PB30 synthetic', 'PB30', 0.8, 1],
  ['vivianite', 'PB27', 0.05, 0.5],
  ['PG8', 'PG7', 0.3, 0.6, 30],
  ['PG10', 'PY129', 1.1, 0.8, 5],
  ['PG15', 'PG17', 1.2, 1],
  ['PG22', 'PG21', 0.8, 0.9],
  ['PG26', 'PG18', 0.8, 1.5, 5],
  ['copper-resinate', 'PG20', 0.5, 0.3],
  ['PBr8', 'PBr7 burnt-umber', 1.5, 1],
  ['PBr25', 'PR83', 1.8, 0.8, -10],
  ['PBr33', 'PBr7 burnt-umber', 1, 1.2],
  ['PBr41', 'PBr7 burnt-sienna', 1.5, 0.6],
  ['PBk26', 'PBk9', 1, 2],
  ['PBk28', 'PBk9', 1, 2],
  ['PBk31', 'PBk9', 0.8, 0.8],
];

const STRENGTH_FACTOR = 2;

/** `off`: ΔE00 to expect of a colour drawn from a relative, its strength apart. */
export function kinPigments(known: readonly Derived[], off: number): Derived[] {
  const lead = known.find((p) => p.id === 'PW1')!;
  const made: Derived[] = [];
  for (const [id, name, k, s, shift = 0] of ROWS) {
    const kin = [...known, ...made].find((p) => p.id === name);
    if (!kin) throw new Error(`${id}: its kin ${name} is not known yet`);
    const pair = { a: moved(kin.a, k, shift), s: moved(kin.s, s, shift) };
    made.push({
      id,
      class: 'D' as const,
      ...pair,
      residual: Math.hypot(off, strengthResidual(pair, lead, STRENGTH_FACTOR)),
      source: 'kinship' as const,
      note: `From ${name}.`,
    });
  }
  return made;
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
