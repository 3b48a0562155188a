/** What `match --format json` prints. */
import type { Proposal } from '../features/propose.ts';
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
