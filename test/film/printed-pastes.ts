/** The pastes that handbooks print, and what the code makes of the same pigments. */
import { RUB_OUT_OIL_DENSITY } from '../../language/src/film/cpvc.ts';
import { MIDDLE, paste } from '../../language/src/film/paste.ts';
import { allPigments, binder, solvent } from '../../language/src/materials/catalogue.ts';
import type { Pigment } from '../../language/src/materials/types.ts';

export interface Row {
  readonly pigment: string;
  /** g of oil for 100 g of pigment */
  readonly oil: number;
  readonly from: 'Massey' | 'Uebele' | 'Church' | 'Gardner';
}

/** Parts of pigment to one of oil by weight: Massey, Formulas for Painters, “Ratios of dry pigment to oil”, as a web page copies the table. */
export const MASSEY: Readonly<Record<string, number>> = {
  PR83: 0.66,
  'PBr7 burnt-sienna': 1.66,
  'PBr7 burnt-umber': 1.33,
  PO20: 3,
  PR108: 3,
  PY37: 3,
  PB35: 2.5,
  PG17: 3.4,
  PB28: 1.66,
  PG23: 1,
  PBk9: 1,
  PY42: 1.6,
  PY41: 4,
  'PB15:3': 0.4,
  PG7: 0.64,
  PB27: 1.14,
  'PBr7 raw-sienna': 1.77,
  'PBr7 raw-umber': 1.28,
  PB29: 2.3,
  PG18: 1.11,
  PW1: 7.5,
  PY43: 2,
  PW4: 5,
  // the table's Indian red and Venetian red; its titanium white repeats raw umber's figures and is left out as a slip
  'PR101 dark': 3.66,
  PR102: 1.78,
};

/** g of oil for 100 g: Uebele, Paint Making and Color Grinding (1913), the middle where it tells two sorts. */
const UEBELE: Readonly<Record<string, number>> = {
  PW1: 10,
  PW5: 15,
  PB27: 100,
  PY43: 47,
  PY42: 43,
  PY34: 16.3,
  'PBr7 raw-umber': 77,
  'PBr7 burnt-umber': 78,
  PBk9: 91,
  NR4: 100,
  PR83: 100,
};

/** g of oil for 100 g: Gardner, Paint Technology and Tests (1911). */
const GARDNER: Readonly<Record<string, number>> = { PW22: 9, PBk6: 175 };

export const pigments = new Map(allPigments().map((p) => [p.id, p]));
export const pigment = (id: string): Pigment => pigments.get(id)!;

/** Church, The Chemistry of Paints and Painting (1915), is in the catalogue; its row for lakes names madder. */
const CHURCH = allPigments().flatMap((p): Row[] =>
  p.paintOil?.source.text.includes('Church') &&
  !['PR83', 'NR8', 'PG23 bohemian', 'PR102 burnt'].includes(p.id)
    ? [{ pigment: p.id, oil: (p.paintOil.low + p.paintOil.high) / 2, from: 'Church' }]
    : [],
);

export const rows: readonly Row[] = [
  ...Object.entries(MASSEY).map(([id, parts]): Row => ({ pigment: id, oil: 100 / parts, from: 'Massey' })),
  ...Object.entries(UEBELE).map(([id, oil]): Row => ({ pigment: id, oil, from: 'Uebele' })),
  ...Object.entries(GARDNER).map(([id, oil]): Row => ({ pigment: id, oil, from: 'Gardner' })),
  ...CHURCH,
];

export const middle = (f: { readonly low: number; readonly high: number }) => (f.low + f.high) / 2;
/** Share of pigment in a paste, by volume. */
export const volume = (id: string, oil: number) =>
  1 / (1 + (oil * middle(pigment(id).density)) / (100 * RUB_OUT_OIL_DENSITY));
export const printed = (row: Row) => volume(row.pigment, row.oil);

/** What the code makes of one pigment in linseed, nothing stated. */
export function tube(id: string, oilAbsorption: -1 | 0 | 1, stiffness: -1 | 0 | 1): number {
  const made = paste(
    { name: id, pigments: [{ pigment: pigment(id), mass: 1 }], binder: binder('linseed')! },
    { ...MIDDLE, oilAbsorption, stiffness },
    solvent,
  )!;
  return made.pigments[0]!.volume;
}

/** The least and the most pigment that the code believes a tube may hold, by volume. */
export function tubeRange(id: string): readonly [number, number] {
  const ends = ([-1, 1] as const).flatMap((a) => ([-1, 1] as const).map((b) => tube(id, a, b)));
  return [Math.min(...ends), Math.max(...ends)];
}
