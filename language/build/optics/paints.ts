/**
 * The paints of the measured oil films: which pigment each holds, its density, and the oil in it. From handbook
 * densities (Gettens & Stout 1942 and standard tables) and the oil contents reported for the reconstructions; the
 * figures marked `guess` are ours: fillers at 1.3 times their oil absorption, the eosin lakes like other lakes.
 */
export interface PaintRow {
  /** name in the measured files */
  readonly name: string;
  /** id in our catalogue; absent for paints that only help to fit the others */
  readonly id?: string;
  /** g/cm³ of the pigment */
  readonly density: number;
  /** oil by mass of the paint */
  readonly oil: number;
  readonly guess?: true;
}

/** g/cm³, liquid linseed oil */
export const OIL_DENSITY = 0.93;

export const PAINTS: readonly PaintRow[] = [
  { name: 'Eosin1Wax', density: 1.9, oil: 0.5, guess: true },
  { name: 'Eosin', density: 1.9, oil: 0.5, guess: true },
  { name: 'Eosin2PbWax', density: 1.9, oil: 0.5, guess: true },
  { name: 'Cochineal', id: 'NR4', density: 2.0, oil: 0.4 },
  { name: 'Minium', id: 'PR105', density: 8.73, oil: 0.095 },
  { name: 'Vermillion', id: 'PR106', density: 8.09, oil: 0.187 },
  { name: 'ZincWhite', id: 'PW4', density: 5.65, oil: 0.173 },
  { name: 'ZincWhiteLinseed', density: 5.65, oil: 0.173 },
  { name: 'LeadWhite', id: 'PW1', density: 6.7, oil: 0.134 },
  { name: 'ViridianGreen', id: 'PG18', density: 3.32, oil: 0.351 },
  { name: 'EmeraldGreen', id: 'PG21', density: 3.26, oil: 0.15 },
  { name: 'UltramarineBlue', id: 'PB29', density: 2.34, oil: 0.277 },
  { name: 'CobaltBlue', id: 'PB28', density: 4.2, oil: 0.404 },
  { name: 'PrussianBlue', id: 'PB27', density: 1.83, oil: 0.428 },
  { name: 'ChromeYellow', id: 'PY34', density: 6.0, oil: 0.309 },
  { name: 'ChromeYellowPoppyseed', density: 6.0, oil: 0.309 },
  { name: 'ChromeYellowOtero', density: 6.0, oil: 0.309 },
  { name: 'BariumSulphate', id: 'PW21', density: 4.36, oil: 0.135, guess: true },
  { name: 'CalciumCarbonate', id: 'PW18', density: 2.7, oil: 0.222, guess: true },
  { name: 'BoneBlack', id: 'PBk9', density: 2.29, oil: 0.498 },
];

/** cm³ of paint per g, volumes taken to add. */
export const specificVolume = ({ density, oil }: PaintRow): number => oil / OIL_DENSITY + (1 - oil) / density;

/** Pigment volume over paint volume. */
export const pigmentShare = (row: PaintRow): number => (1 - row.oil) / row.density / specificVolume(row);
