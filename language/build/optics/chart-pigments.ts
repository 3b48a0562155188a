/**
 * Class C: films over four grounds tell a pigment's hue and how what it absorbs stands to what it scatters, but not how
 * much of it lay in the film. The strength is set against a neighbour already known: the largest absorption, or (bodies
 * of a high index, where absorption saturates) the scattering at 650 nm, is expected to be a stated multiple of it.
 */
import { BANDS, type Spectrum } from '../../src/optics/wavelengths.ts';
import type { Charts } from './charts.ts';
import { readTable } from './csv.ts';
import {
  type ChartFilm,
  type Estimate,
  type Expectations,
  estimate,
  type Pair,
  peakOf,
  type Tint,
} from './estimate.ts';
import { expected } from './expectations.ts';
import { spectrum } from './films.ts';
import { kubelkaMunk } from './kubelka-munk.ts';
import { expectedOffOf } from './radius.ts';
import { heldOutSorts } from './sorts.ts';
import type { Derived } from './table.ts';
import { strengthResidual } from './uncertain.ts';

export interface ChartRow {
  readonly id: string;
  readonly chart: string;
  /** numbers of the sorts taken; all unless said */
  readonly sorts?: readonly number[];
  /** what of the neighbour sets the strength, and how many times of it (ours: handbook tinting strengths in order) */
  readonly by: 'absorption' | 'scattering';
  readonly neighbour: string;
  readonly times: number;
  /** another sort of the same substance with which it shares the shape of absorption */
  readonly shape?: string;
  /**
   * the neighbour's own chart: then only how the two charts differ is taken from them, which takes out what is common to
   * both (streaks that let light through where the colour is strongest)
   */
  readonly beside?: readonly [chart: string, sorts?: readonly number[]];
}

const row = (
  id: string,
  chart: string,
  sorts: readonly number[] | undefined,
  by: ChartRow['by'],
  neighbour: string,
  times: number,
  shape?: string,
): ChartRow => ({
  id,
  chart,
  ...(sorts ? { sorts } : {}),
  by,
  neighbour,
  times,
  ...(shape ? { shape } : {}),
});

/** In the order in which they are needed. Earths take their strength from the acrylic set's own earths. */
export const CHART_ROWS: readonly ChartRow[] = [
  row('PBr7 raw-umber', 'raw-umber', undefined, 'absorption', 'PBr7 raw-umber', 1),
  row('PBr7 burnt-umber', 'burnt-umber', undefined, 'absorption', 'PBr7 burnt-umber', 1),
  row('PBr7 burnt-sienna', 'burnt-sienna', undefined, 'absorption', 'PBr7 burnt-sienna', 1),
  row('PBr7 raw-sienna', 'raw-sienna', undefined, 'absorption', 'PBr7 raw-sienna', 1),
  row('PY43', 'yellow-ochre', undefined, 'absorption', 'PY43', 1),
  row('PY35', 'cadmium-yellow', [1, 3, 6, 8], 'scattering', 'PY34', 1),
  row('PY37', 'cadmium-yellow', [2, 4, 7, 9], 'scattering', 'PY34', 1),
  row('PO20', 'cadmium-orange', [1, 3, 6], 'scattering', 'PR106', 1.2),
  row('PR108 light', 'cadmium-red', [1, 4], 'scattering', 'PR106', 1.2),
  row('PR108', 'cadmium-red', [2, 5], 'scattering', 'PR106', 1.2),
  row('PR108 deep', 'cadmium-red', [3, 6], 'scattering', 'PR106', 1.2),
  row('PR83', 'alizarin-crimson', undefined, 'absorption', 'NR4', 0.8),
  row('NR9', 'madder-lake', undefined, 'absorption', 'NR4', 0.4),
  row('PY41', 'naples-yellow', [1, 2], 'scattering', 'PW1', 1.5),
  row('PY41 light', 'naples-yellow', [3], 'scattering', 'PW1', 1.5),
  row('PBr24', 'naples-yellow-imitation', undefined, 'scattering', 'PW6', 0.5),
  row('PY40', 'aureolin', undefined, 'absorption', 'PY43', 0.8),
  row('PY184', 'bismuth-vanadate-yellow', [1, 2, 4], 'scattering', 'PY34', 1),
  row('PY53', 'nickel-titanium-yellow', undefined, 'scattering', 'PW6', 0.5),
  row('PB30', 'azurite', [1, 2, 3], 'absorption', 'PB28', 0.2),
  row('PB32', 'smalt', undefined, 'absorption', 'PB28', 0.12),
  row('PB29 natural', 'lapis-lazuli', [1, 3, 4], 'absorption', 'PB29', 0.5),
  row('NB1', 'indigo', [3], 'absorption', 'PB27', 0.5),
  row('PV14', 'cobalt-violet', [2, 3], 'absorption', 'PB28', 0.4),
  row('PV15', 'ultramarine-violet', undefined, 'absorption', 'PB29', 0.5),
  row('PB36 turquoise', 'cobalt-turquoise', undefined, 'absorption', 'PB36', 1),
  row('PG39', 'malachite', undefined, 'absorption', 'PB28', 0.12),
  row('PG20', 'verdigris', undefined, 'absorption', 'PB28', 0.12),
  row('PG50', 'cobalt-green', [2], 'scattering', 'PR101', 0.5),
  row('PG23', 'green-earth', undefined, 'absorption', 'PBr7 raw-sienna', 0.3),
  row('PG23 bohemian', 'green-earth', [2, 1, 3, 6, 9, 13], 'absorption', 'PBr7 raw-sienna', 0.3),
  row('PY39', 'orpiment', undefined, 'scattering', 'PY34', 0.8),
  row('PR39', 'realgar', undefined, 'scattering', 'PY34', 0.8),
  row('NBr8', 'van-dyck-brown', undefined, 'absorption', 'PBk9', 0.6),
  row('PBk8', 'vegetable-or-ivory-black', undefined, 'absorption', 'PBk9', 1.2),
  row('PR101 transparent', 'iron-oxide-red-transparent', undefined, 'absorption', 'PR101', 1, 'PR101'),
  row('PR101 light', 'iron-oxide-red', [5, 6, 3], 'scattering', 'PR101', 1, 'PR101'),
  row('PR101 dark', 'iron-oxide-red', [4, 7, 2], 'scattering', 'PR101', 1, 'PR101'),
  row('PR101 violet', 'caput-mortuum', [1, 2], 'scattering', 'PR101', 0.8),
  row('PY42', 'iron-oxide-yellow', [3, 4, 5], 'scattering', 'PR101', 0.8),
  row('PY42 transparent', 'iron-oxide-yellow-transparent', undefined, 'absorption', 'PY43', 1.2, 'PY42'),
  row('PBr6', 'iron-oxide-brown', undefined, 'scattering', 'PR101', 0.8),
  row('PR102', 'red-earth', [2, 4, 5], 'scattering', 'PR101', 0.5),
  {
    ...row('PG36', 'phthalocyanine-green-yellowish', undefined, 'absorption', 'PG7', 0.7),
    beside: ['phthalocyanine-green'],
  },
  row('PBk1', 'aniline-black', undefined, 'absorption', 'PBk7', 0.6),
];

/**
 * Two in three strengths are within this factor; those of natural earths, which hold clay and more, within that: nineteen
 * in twenty within about 3.
 */
export const STRENGTH_FACTOR = 1.6;
export const EARTH_FACTOR = 1.75;
const EARTHS = new Set(['PY43', 'PR102', 'PG23', 'PG23 bohemian']);
export const strengthFactor = (id: string): number =>
  id.startsWith('PBr7') || EARTHS.has(id) ? EARTH_FACTOR : STRENGTH_FACTOR;

/** The acrylic set's raw umber absorbs nearly alike in every band, which is no brown: only its strength is taken. */
const FLAT = 'PBr7 raw-umber';

/** How firmly the neighbour sets the strength, as a standard deviation in ln. */
const ANCHOR = 0.3;
/** And how firmly it sets the absorption of one whose scattering is set. */
const LOOSE = 0.6;
const AT_650 = 25;

/** Films of a pigment that only the earlier table of K·X and S·X has, as that table says they looked. */
function olderFilm(csv: string, charts: Charts, name: string): ChartFilm[] {
  const rows = readTable(csv);
  const find = (quantity: string): Spectrum => {
    const of = rows.find((r) => r.pigment === name && r.quantity === quantity);
    if (!of) throw new Error(`no ${quantity} of ${name}`);
    return spectrum(of, `${quantity} of ${name}`);
  };
  const [kx, sx] = [find('KX'), find('SX')];
  return [
    {
      kind: 'film',
      id: name,
      over: charts.grounds.map((ground) => ({
        ground,
        seen: Float64Array.from({ length: BANDS }, (_, b) =>
          b === 0 ? Number.NaN : kubelkaMunk(kx[b]!, sx[b]!, ground[b]!) + charts.mirrored,
        ),
      })),
    },
  ];
}

/** A known pigment's absorption, changed as one chart is from the other. */
function besides(own: Pair, other: Pair, neighbour: Pair, times: number): Pair {
  const changed = neighbour.a.map((v, b) => (v * own.a[b]!) / other.a[b]!);
  const by = (times * Math.max(...neighbour.a)) / Math.max(...changed);
  return { a: changed.map((v) => v * by), s: own.s };
}

export interface ChartPigments {
  readonly pigments: readonly Derived[];
  /** ΔE00 of every film of a sort that had no part in the estimate, its load read from it */
  readonly heldOut: ReadonlyMap<string, readonly number[]>;
}

/** `tints`: of pigments that the acrylic set shows too, for earths of which both speak. */
export function chartPigments(
  charts: Charts,
  olderCsv: string,
  known: readonly Derived[],
  tints: ReadonlyMap<string, readonly Tint[]>,
): ChartPigments {
  const pigments = new Map(known.map((p) => [p.id, p]));
  const lead = pigments.get('PW1')!;
  const heldOut = new Map<string, readonly number[]>();
  const made: Derived[] = [];
  for (const r of CHART_ROWS) {
    const neighbour = pigments.get(r.neighbour);
    if (!neighbour) throw new Error(`${r.id}: its neighbour ${r.neighbour} is not known yet`);
    const films = charts.has(r.chart) ? charts.films(r.chart, r.sorts) : olderFilm(olderCsv, charts, r.chart);
    const peak = Math.log(r.times * peakOf(neighbour.a));
    const expectations: Expectations = {
      ...expected(r.id),
      ...(r.by === 'absorption'
        ? { peak: [peak, ANCHOR] as const }
        : {
            scattering: [Math.log(r.times * neighbour.s[AT_650]!), ANCHOR] as const,
            // Where a film hides only the ratio shows; a white neighbour tells nothing of absorption.
            ...(r.neighbour.startsWith('PW') ? {} : { peak: [peak, LOOSE] as const }),
          }),
      ...(r.shape ? { shape: pigments.get(r.shape)!.a.map(Math.log) } : {}),
    };
    const own: Estimate = estimate(
      films,
      r.id === r.neighbour && r.id !== FLAT ? (tints.get(r.id) ?? []) : [],
      expectations,
    );
    const pair = r.beside
      ? besides(own, estimate(charts.films(...r.beside), [], expectations), neighbour, r.times)
      : own;
    const off = films.length > 1 ? heldOutSorts(films, expectations) : [];
    heldOut.set(r.id, off);
    const derived: Derived = {
      id: r.id,
      class: 'C',
      a: pair.a,
      s: pair.s,
      residual: strengthResidual(pair, lead, strengthFactor(r.id)),
      source: 'four-grounds',
      note: `${films.length} ${films.length > 1 ? 'sorts' : 'film'} of ${r.chart.replaceAll('-', ' ')}; strength set by the ${r.by} of ${r.id === r.neighbour ? 'the acrylic set’s own' : r.neighbour}.`,
    };
    made.push(derived);
    pigments.set(r.id, derived);
  }
  const all = [...heldOut.values()].flat();
  return {
    pigments: made.map((p) => ({
      ...p,
      residual: Math.hypot(p.residual, expectedOffOf(heldOut.get(p.id) ?? [], all)),
    })),
    heldOut,
  };
}
