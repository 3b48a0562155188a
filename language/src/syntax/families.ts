/** Units by what they measure, and the unit each figure is kept in. */

/** A unit's factor to the unit that is kept, or a function where zero points differ. */
export interface Family {
  /** the unit that is kept */
  readonly unit: string;
  readonly units: Readonly<Record<string, number>>;
  /** the unit a reader would add where it is missing; undefined where none belongs */
  readonly usual?: string;
  readonly convert?: (value: number, unit: string) => number;
}

const hours = { hour: 1, hours: 1, h: 1 };
const DAY: Readonly<Record<string, number>> = {
  hour: 1 / 24,
  hours: 1 / 24,
  h: 1 / 24,
  day: 1,
  days: 1,
  week: 7,
  weeks: 7,
  month: 30.4375,
  months: 30.4375,
  year: 365.25,
  years: 365.25,
};

export const families = {
  film: { unit: 'µm', usual: 'µm', units: { µm: 1, um: 1, mm: 1e3, cm: 1e4, m: 1e6 } },
  size: { unit: 'cm', usual: 'cm', units: { cm: 1, mm: 0.1, m: 100, in: 2.54 } },
  days: { unit: 'days', usual: 'days', units: DAY },
  hours: { unit: 'hours', usual: 'hours', units: { ...hours, day: 24, days: 24 } },
  share: { unit: 'fraction', usual: '%', units: { '%': 0.01 }, convert: (v: number) => v / 100 },
  temperature: {
    unit: '°C',
    usual: '°C',
    units: { '°C': 1, C: 1, '°F': 1, F: 1 },
    convert: (v: number, u: string) => (u.endsWith('F') ? ((v - 32) * 5) / 9 : v),
  },
  room: { unit: 'm³', usual: 'm³', units: { 'm³': 1, m3: 1 } },
  tube: { unit: 'ml', usual: 'ml', units: { ml: 1 } },
  lux: { unit: 'lux', usual: 'lux', units: { lux: 1 } },
  oilAbsorption: { unit: 'g per 100 g', usual: 'g/100g', units: { 'g/100g': 1 } },
  density: { unit: 'g/cm³', usual: 'g/cm³', units: { 'g/cm³': 1, 'g/cm3': 1 } },
  count: { unit: '', units: {} },
} as const satisfies Record<string, Family>;

export type FamilyName = keyof typeof families;
