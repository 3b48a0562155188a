/** What occurs in a studio and on a painting, in the unit a figure is kept in: beyond it a slip of the pen is likely. */
export interface Bounds {
  /** what the figure is, as a message begins: `A wait` */
  readonly what: string;
  readonly low: number;
  readonly high: number;
  /** the bounds in the words of the field's own unit */
  readonly words: string;
  /** a likely slip of the unit: what to write instead */
  readonly slip?: { readonly from: RegExp; readonly to: string };
  /** one nought too many is a likely slip here */
  readonly nought?: boolean;
  /** zero is a figure that makes no sense here */
  readonly positive?: boolean;
  /** nothing is counted by halves here */
  readonly whole?: boolean;
}

export const FILM: Bounds = {
  what: 'A film',
  low: 0.1,
  high: 2000,
  words: '0.1 to 2000 µm',
  slip: { from: /mm$|cm$/, to: 'µm' },
  positive: true,
};
/** Body colour and grounds may stand up in relief. */
export const RELIEF: Bounds = { ...FILM, high: 20_000, words: '0.1 µm to 20 mm' };
export const SECTION_FILM: Bounds = { ...RELIEF, low: 0.05 };
export const LIGHTNESS: Bounds = { what: 'A lightness', low: 0, high: 100, words: 'an L* of 0 to 100' };
const SHARE = { low: 0, high: 1, words: '0 to 100 %', nought: true } as const;
export const MEDIUM_SHARE: Bounds = { ...SHARE, what: 'A share of medium' };
export const AREA_SHARE: Bounds = {
  ...SHARE,
  what: 'A share',
  words: 'more than 0 and up to 100 %',
  positive: true,
};
export const OIL_SHARE: Bounds = {
  what: 'An oil content',
  low: 0,
  high: 0.95,
  words: '0 to 95 % by mass',
};
export const TUBE: Bounds = {
  what: 'A tube',
  low: 1,
  high: 5000,
  words: '1 to 5000 ml',
  positive: true,
};
export const PRICE: Bounds = { what: 'A price', low: 0, high: 1e6, words: '0 to 1,000,000' };
export const HUMIDITY: Bounds = { ...SHARE, what: 'A humidity' };
const LONG = { low: 0, high: 36_525, words: 'no time at all to 100 years' } as const;
export const WAIT: Bounds = { ...LONG, what: 'A wait' };
export const TIME: Bounds = { ...LONG, what: 'A time' };
export const COATS: Bounds = { what: 'A number of coats', low: 1, high: 200, words: '1 to 200', whole: true };
export const SIDE: Bounds = {
  what: 'A side',
  low: 0.5,
  high: 3000,
  words: '0.5 cm to 30 m',
  positive: true,
};
export const TOLERANCE: Bounds = {
  what: 'A tolerance',
  low: 0.1,
  high: 100,
  words: 'a ΔE00 of 0.1 to 100',
};
export const TEMPERATURE: Bounds = {
  what: 'A temperature',
  low: -10,
  high: 45,
  words: '−10 to 45 °C',
  nought: true,
};
export const ROOM: Bounds = { what: 'A room', low: 1, high: 100_000, words: '1 to 100,000 m³' };
export const AIR_CHANGES: Bounds = {
  what: 'Air changes',
  low: 0,
  high: 100,
  words: '0 to 100 an hour',
};
export const SESSION: Bounds = {
  what: 'A session',
  low: 0.05,
  high: 24,
  words: '3 minutes to 24 hours',
};
export const LUX: Bounds = { what: 'Light', low: 0, high: 150_000, words: '0 to 150,000 lux' };
export const LIGHT_HOURS: Bounds = {
  what: 'Light',
  low: 0,
  high: 8784,
  words: '0 to 8784 hours, as many as a year has',
};
export const DENSITY: Bounds = { what: 'A density', low: 0.8, high: 12, words: '0.8 to 12 g/cm³' };
export const OIL_ABSORPTION: Bounds = {
  what: 'An oil absorption',
  low: 2,
  high: 400,
  words: '2 to 400 g per 100 g',
};
