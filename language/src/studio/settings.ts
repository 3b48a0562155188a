/**
 * What the studio's estimates assume where nobody measured. One table to change; every line says what it is. Volumes in
 * ml, areas in m², times in hours. Ranges are low, likely, high.
 */
import { between, type Interval } from '../materials/interval.ts';
import type { Source } from '../materials/types.ts';

const ours = (text: string): Source => ({ text, mark: 'assumption' });

/** Paint left on palette, brush and rag, over what reaches the painting. */
export const WASTE = 0.25;
export const WASTE_SOURCE = ours('a quarter more paint than the film holds, for palette and brush');

/** How much less the air changed does than in a perfectly mixed room. */
export const MIXING: Interval & { readonly source: Source } = {
  ...between(1, 3, Math.sqrt(3)),
  source: {
    text: 'mixing factor 1 (well mixed) to 3; industrial hygiene uses 1 to 10 (from memory)',
    mark: 'memory',
  },
};

/** Hours of a session the plan does not name. */
export const SESSION_HOURS = 3;

/** Sittings of one layer that are listed one by one; amounts count all its coats. */
export const MOST_COATS = 100;

/** Air changes an hour of a room whose airing the plan does not tell: windows shut. */
export const CLOSED_ROOM: Interval & { readonly source: Source } = {
  low: 0.2,
  likely: 0.5,
  high: 1,
  source: {
    text: 'a dwelling with its windows shut changes its air about every two hours (from memory)',
    mark: 'memory',
  },
};

/** Thinner used up by cleaning brushes, ml a sitting. All of it is taken to evaporate. */
export const BRUSHES: Interval & { readonly source: Source } = {
  low: 5,
  likely: 15,
  high: 30,
  source: ours('5 to 30 ml of thinner used up a sitting from an open brush jar'),
};

/** What a preparation takes up of its agent, ml for every m². */
export const PREPARATION: Readonly<Record<'wipe' | 'wash' | 'oil-out' | 'abrade', Interval>> = {
  wipe: { low: 10, likely: 20, high: 40 },
  wash: { low: 50, likely: 100, high: 200 },
  'oil-out': { low: 3, likely: 6, high: 15 },
  abrade: { low: 20, likely: 50, high: 100 },
};
/** Agents that are used by the piece: nobody buys a volume of them. */
export const PIECES: readonly string[] = ['abrasive-pad', 'sandpaper', 'steel-wool', 'chalk-cloth'];
export const PREPARATION_SOURCE = ours(
  'a damp rag for wiping, a wet sponge for washing, oil rubbed out to a breath: no measured figures were found',
);

/** Share of a wet ground or size that stays, by volume: for layers named by a material, not a formula. */
export const GROUND_SOLIDS: Interval & { readonly source: Source } = {
  low: 0.3,
  likely: 0.4,
  high: 0.6,
  source: ours('grounds taken to hold 30 to 60 % solids by volume as they are laid'),
};

/** Resin in a brushing varnish, by volume, where a layer names a resin that is sold dry. */
export const VARNISH_SOLIDS: Interval & { readonly source: Source } = {
  low: 0.15,
  likely: 0.25,
  high: 0.4,
  source: {
    text: 'one part of resin in two to five of spirit is a usual brushing varnish',
    mark: 'common practice',
  },
};

/** Resins that dissolve in white spirit; the natural ones want turpentine. */
export const WHITE_SPIRIT_RESINS: readonly string[] = [
  'ketone-resin',
  'hydrocarbon-resin',
  'acrylic-resin',
  'beeswax',
  'microcrystalline-wax',
];

/** Ammonia, by mass, in its solution: the rest is water. */
export const AMMONIA_SHARE: Interval & { readonly source: Source } = {
  low: 0.1,
  likely: 0.25,
  high: 0.3,
  source: ours('ammonia solution taken as 25 % by mass, between household and laboratory strength'),
};

/** Vapours that no list limits are held against the limit of turpentine: the terpenes among them resemble it. */
export const LIKE_TURPENTINE = 'turpentine';

/** Method of an agent that is itself the layer: a size, a ground. Its name is a material, not a liquid of that name. */
export const LAID = 'ground';
