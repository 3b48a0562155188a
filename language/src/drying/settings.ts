/**
 * The figures of the drying model that belong to no material. One table to change. Ranges are low, likely, high.
 * touch-dry = base of the binder blend × pigment factor × (film / 30 µm)^n × Q10^((20 − T) / 10)
 */
import type { Interval } from '../materials/interval.ts';
import type { Source } from '../materials/types.ts';

const ours = (text: string): Source => ({ text, mark: 'assumption' });

export const HOURS = 1 / 24;

/** Kay, The Painter's Guide to Studio Methods and Materials (1983) p.199: times of an alkyd paint, in days. */
export const ALKYD = {
  tacky: 4 * HOURS,
  touchDry: 8 * HOURS,
  solid: 18 * HOURS,
  overpaint: 1,
  source: {
    text: "Kay, The Painter's Guide to Studio Methods and Materials (1983) p.199: tacky in 4 h, dry to touch in 8 h, solid in 18 h, overpaint next day",
    mark: 'published',
  } satisfies Source,
};

/** Reference film in µm, and the films between which thickness changes the skin's drying at all. */
export const FILM = { reference: 30, thinnest: 15, thickest: 60 };

/** Exponent of thickness for the skin. */
export const SKIN: Interval = { low: 0, likely: 0.5, high: 1 };

/** Exponent of thickness for drying through. */
export const THROUGH: Interval = { low: 1, likely: 1.5, high: 2 };

/** Change of rate over 10 °C. */
export const Q10: Interval & { readonly source: Source } = {
  low: 1.8,
  likely: 2.4,
  high: 2.5,
  source: {
    text: 'activation energy 66 ± 4 kJ/mol of linolenic acid oxidising without drier (J. Agric. Food Chem. 53 (2005) 9073, abstract): 2.44 by our arithmetic',
    mark: 'derived',
  },
};

/** Temperature the base times hold at, °C. */
export const BASE_TEMPERATURE = 20;

/** Multiples of touch-dry. */
export const OPEN: Interval & { readonly source: Source } = {
  low: 0.3,
  likely: 0.45,
  high: 0.6,
  source: ours('open time as a share of touch-dry; half of it in the alkyd times of Kay 1983'),
};
/**
 * Setting: an alkyd or a resin is too sticky to be worked when its spirit has left it, long before it is dry. Days at
 * 30 µm; the thinner the film, the sooner. White spirit as a liquid of 5 µm is gone in minutes (a tenth as fast as butyl
 * acetate, evaporation-rate glossary in the solvent table); out of a film that thickens it takes hours.
 */
export const SETTING = {
  days: { low: 2.5 * HOURS, likely: ALKYD.tacky, high: 6 * HOURS } satisfies Interval,
  /** exponent of thickness: 1 where the spirit leaves by the surface alone, more where it has to come up through the film */
  thickness: { low: 0.7, likely: 1, high: 1.3 } satisfies Interval,
  /** so much a volume of alkyd or resin counts beside the same of oil */
  weight: 2.5,
  source: ours(
    'alkyd and resin set when their spirit has left, in proportion to the film, 4 h at 30 µm (tacky, Kay 1983); oil beside them keeps the film open on a log scale, where alkyd or resin counts 2½ times',
  ),
};

export const READY: Interval & { readonly source: Source } = {
  low: 1.2,
  likely: 1.5,
  high: 2,
  source: ours('ready to be painted over at 1.2 to 2 times touch-dry'),
};
export const FIRM: Interval & { readonly source: Source } = {
  low: 2,
  likely: 3,
  high: 5,
  source: ours('dried through a 30 µm film at 2 to 5 times touch-dry; 2.25 in the alkyd times of Kay 1983'),
};

/** Days as far as these figures reach, ten years: what may be firm later is firm no sooner, and that is all they say. */
export const REACH = 3652.5;

/** Days that a film rich in lamp black or graphite may stay soft below. */
export const SOFT_BELOW = {
  codes: ['PBk6', 'PBk10'] as readonly string[],
  /** from this share of the pigment volume */
  from: 0.25,
  days: 365,
  source: {
    text: 'Toch, Materials for Permanent Painting (1911): lamp black and graphite may stay soft below for a year',
    mark: 'published',
  } satisfies Source,
};

/**
 * How much two steps of a calendar err together (correlation), and how many of a hundred true days a range is taken to
 * hold. Of two coats of one paint half of what is unknown (as variance) is the same: the paint, the room, the season;
 * of two paints in one room a quarter. How thick a coat came out and when it was judged ready is its own.
 */
export const SHARED = {
  paint: 0.5,
  room: 0.25,
  held: 90,
  source: ours('how far coats err together, and how many days in a hundred a range holds'),
};
