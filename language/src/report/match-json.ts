/** What `match --format json` prints. */
import type { Found } from '../features/backwards.ts';
import type { Proposal } from '../features/propose.ts';
import type { Lab } from '../optics/cie.ts';
import type { Recipe } from '../optics/match.ts';
import type { ThicknessMatch } from '../optics/match-thickness.ts';
import { sensible } from '../study/sensible.ts';
import { type Tool, tool } from '../study/tool.ts';

/** Proportions for a colour, best first. Colours are CIELAB D65/2°, differences ΔE00. */
export interface MatchJson {
  readonly version: '1';
  readonly tool: Tool;
  readonly target: Proposal['target'];
  readonly recipes: readonly Recipe[];
  readonly reachable: boolean;
  /** where it is not reachable: why, in words */
  readonly limit: string | null;
  /** the film that was assumed, in words */
  readonly film: string;
  /** names of the paints it was sought among */
  readonly paints: readonly string[];
}

/** How thick one glaze must lie (µm, dry, in all), and in how many coats of its own film. */
export interface FilmMatchJson {
  readonly version: '1';
  readonly tool: Tool;
  readonly film: ThicknessMatch;
  readonly coats: ThicknessMatch;
}

/** A proposal of `propose` as JSON. */
export const matchJson = ({ target, recipes, reachable, limit, film, paints }: Proposal): MatchJson =>
  sensible({
    version: '1',
    tool,
    target,
    recipes,
    reachable,
    limit: limit?.text ?? null,
    film,
    paints,
  });

/** What `proposeFilm` found, as JSON. */
export const filmMatchJson = (found: Pick<FilmMatchJson, 'film' | 'coats'>): FilmMatchJson =>
  sensible({ version: '1', tool, film: found.film, coats: found.coats });

/** Ways to an area's colour through layers of the plan, best first. Colours are CIELAB D65/2°, differences ΔE00. */
export interface ThroughJson {
  readonly version: '1';
  readonly tool: Tool;
  readonly area: string;
  readonly target: { readonly lab: Lab; readonly within: number };
  readonly ways: readonly (Omit<Found, 'colour' | 'strip' | 'day' | 'text'> & {
    readonly lab: Lab;
    readonly hex: string;
    readonly outOfGamut: boolean;
    /** within which the truth is expected */
    readonly radius: number;
    /** colours of the area from the bare support upwards */
    readonly strip: readonly { readonly layer: string; readonly lab: Lab; readonly hex: string }[];
    /** day the last of the layers is likely laid, as in `study` */
    readonly day: number | null;
  })[];
  readonly reachable: boolean;
}

/** What `backwards` found, as JSON. */
export const throughJson = ({
  area,
  target,
  within,
  ways,
}: {
  readonly area: string;
  readonly target: Lab;
  readonly within: number;
  readonly ways: readonly Found[];
}): ThroughJson =>
  sensible({
    version: '1',
    tool,
    area,
    target: { lab: target, within },
    ways: ways.map(({ colour, strip, day, text: _, ...way }) => ({
      ...way,
      lab: colour.lab,
      hex: colour.hex,
      outOfGamut: colour.outOfGamut,
      radius: colour.radius,
      strip: strip.map((s) => ({ layer: s.layer, lab: s.colour.lab, hex: s.colour.hex })),
      day: day ?? null,
    })),
    reachable: ways[0]?.reached ?? false,
  });
