/**
 * How far off pigments of class B and D are to be expected: chart films, which took no part in them, predicted from the
 * acrylic set, and from relatives of a pigment in place of the pigment itself.
 */
import type { Charts } from './charts.ts';
import { moved } from './kinship.ts';
import { expectedOff, expectedOffOf } from './radius.ts';
import { offOf } from './sorts.ts';
import type { Derived } from './table.ts';

/** Pigments of the acrylic set that charts show too. */
const ACRYLIC: Readonly<Record<string, string>> = {
  PG7: 'phthalocyanine-green',
  'PB15:3': 'phthalocyanine-blue',
  PV23: 'dioxazine-violet',
  PG17: 'chromium-oxide-green',
  PB36: 'cerulean-blue',
  PR101: 'iron-oxide-red',
  PY43: 'yellow-ochre',
  'PBr7 raw-sienna': 'raw-sienna',
  'PBr7 burnt-sienna': 'burnt-sienna',
  'PBr7 burnt-umber': 'burnt-umber',
  'PBr7 raw-umber': 'raw-umber',
};

/** What the trade would say of a pigment from a relative, as for class D: chart, relative, scattering, shift in nm. */
const RELATIVES: readonly (readonly [
  chart: string,
  sorts: readonly number[] | undefined,
  kin: string,
  s: number,
  shift: number,
])[] = [
  ['cadmium-red', [1, 4], 'PR108', 1, -10],
  ['cadmium-red', [3, 6], 'PR108', 1, 12],
  ['cadmium-yellow', [2, 4, 7, 9], 'PY35', 1, 35],
  ['cadmium-orange', [1, 3, 6], 'PY37', 1, 50],
  ['iron-oxide-red', [5, 6, 3], 'PR101', 1, 0],
  ['caput-mortuum', [1, 2], 'PR101', 1, 8],
  ['red-earth', [2, 4, 5], 'PR101', 0.6, 0],
  ['madder-lake', [1, 3, 4], 'PR83', 1, -5],
  ['lapis-lazuli', [1, 3, 4], 'PB29', 1, 0],
  ['cobalt-turquoise', undefined, 'PB36', 1, -20],
  ['indigo', [3], 'PB27', 1, 0],
  ['phthalocyanine-green-yellowish', undefined, 'PG7', 1, 10],
  ['iron-oxide-yellow', [3, 4, 5], 'PY43', 1.5, 0],
  ['naples-yellow', [3], 'PY41', 1, -8],
  ['malachite', undefined, 'PG21', 1, 0],
];

export interface ClassOffs {
  /** ΔE00 within which two thirds lie: class B of a pigment, class D of all */
  acrylic(id: string): number;
  readonly kin: number;
  /** every difference that judged, by class */
  readonly judged: Readonly<Record<'B' | 'D', readonly number[]>>;
}

export function classOffs(charts: Charts, acrylic: readonly Derived[], known: readonly Derived[]): ClassOffs {
  const own = new Map(
    acrylic.flatMap((p) =>
      ACRYLIC[p.id] ? [[p.id, charts.films(ACRYLIC[p.id]!).flatMap((film) => offOf(film, p))] as const] : [],
    ),
  );
  const all = [...own.values()].flat();
  const kin = RELATIVES.flatMap(([chart, sorts, name, s, shift]) => {
    const relative = known.find((p) => p.id === name)!;
    const pair = { a: moved(relative.a, 1, shift), s: moved(relative.s, s, shift) };
    return charts.films(chart, sorts).flatMap((film) => offOf(film, pair));
  });
  return {
    acrylic: (id) => expectedOffOf(own.get(id) ?? [], all),
    kin: expectedOff(kin),
    judged: { B: all, D: kin },
  };
}
