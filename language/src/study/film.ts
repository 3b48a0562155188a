/** The film of one layer: what it is composed of, how thick it lies, and what had to be assumed for that. */
import { compose } from '../film/compose.ts';
import type { FilmInput } from '../film/input.ts';
import { solvent } from '../materials/catalogue.ts';
import { exactly, type Interval, scale } from '../materials/interval.ts';
import type { Layer, Plan } from '../plan/plan.ts';
import type { Assumption, Composition } from '../results/study.ts';
import { BELIEVED, believed, FILM, FILM_SOURCE, PASTE_SOURCE } from './defaults.ts';
import {
  type Colour,
  colourOf,
  holdsUnknown,
  type Liquids,
  mediumOf,
  tubeBinder,
  withoutProportions,
} from './recipe.ts';

export interface LayerFilm {
  readonly composition?: Composition;
  /** pastes and liquids, for colour */
  readonly colour?: Colour;
  readonly medium?: Liquids;
  readonly coats: number;
  /** µm of one coat */
  readonly coat: Interval;
  /** µm of all coats */
  readonly dryFilm: Interval;
  readonly assumptions: readonly Assumption[];
}

/** What a film depends on, drawn from a layer before anything is computed; `key` is equal for equal content. */
export interface FilmPlan {
  readonly key: string;
  compute(): LayerFilm;
}

const written = (x: Interval): string => `${x.low}..${x.likely}..${x.high}`;

export function filmPlan(layer: Layer, kind: Plan['kind']): FilmPlan {
  const formula = layer.colour?.kind === 'formula' ? layer.colour.formula : undefined;
  const claimsNothing = kind === 'record' && formula !== undefined && withoutProportions(formula);
  const nobodyKnows = holdsUnknown(formula);
  const colour =
    formula && !claimsNothing && !nobodyKnows
      ? colourOf(formula, tubeBinder(layer.material?.is?.id))
      : undefined;
  const medium = layer.medium && mediumOf(layer.medium);
  const share = layer.medium?.share?.value;
  const { film, coats } = layer;
  const material = layer.material?.is;
  const key = [
    layer.kind,
    kind,
    colour?.key ?? (nobodyKnows ? 'unknown' : formula ? 'unresolved' : (layer.colour?.kind ?? '')),
    medium?.key ?? (layer.medium ? 'unresolved' : ''),
    share ? written(share) : '',
    film ? film.given + written(film.value) : '',
    coats ? written(coats.value) : '',
    material?.id ?? '',
  ].join('\n');

  const compute = (): LayerFilm => {
    const assumptions: Assumption[] = [];
    const counted: Assumption[] = [];
    const times = coatCount(layer, kind, counted);
    const coat = coatFilm(layer, times, assumptions);
    assumptions.push(...counted);
    if (claimsNothing)
      assumptions.push({
        field: 'colour',
        value: 'no proportions',
        why: 'a record’s formula without amounts names what is there and no more',
      });
    if (nobodyKnows)
      assumptions.push({
        field: 'colour',
        value: 'unknown',
        why: 'of a paint in it nobody knows the composition',
      });
    assumePastes(colour, assumptions);
    const broken =
      (formula && !claimsNothing && !nobodyKnows && !colour) || (layer.medium !== undefined && !medium);
    // a layer that says nothing of its colour but names a medium is a layer of that medium: an oiling out, a varnish
    const composable =
      !broken && (colour !== undefined || (layer.colour === undefined && medium !== undefined));
    return {
      composition: composable ? composition(layer, colour, medium, coat, assumptions) : undefined,
      colour,
      medium,
      coats: times,
      coat,
      dryFilm: scale(coat, times),
      assumptions,
    };
  };
  return { key, compute };
}

function composition(
  layer: Layer,
  colour: Colour | undefined,
  medium: Liquids | undefined,
  coat: Interval,
  assumptions: Assumption[],
) {
  let share = exactly(0);
  if (medium) {
    if (layer.medium?.share) share = believed(layer.medium.share.value, BELIEVED.share);
    else if (!colour) share = exactly(1);
    else {
      share = { low: 0.1, likely: 0.25, high: 0.5 };
      assumptions.push({
        field: 'medium',
        value: '25 % (10 to 50 %)',
        why: 'the layer names a medium and no share of it',
      });
    }
  } else if (colour && layer.kind !== 'ground') {
    assumptions.push({
      field: 'medium',
      value: 'none',
      why: 'the layer names no medium: paint as it comes from the tube',
    });
  }
  const input: FilmInput = {
    pastes: colour?.pastes ?? [],
    medium: medium && { name: medium.name, parts: medium.parts },
    mediumShare: share,
    dryFilm: coat,
    solvent,
  };
  return compose(input);
}

/** What is assumed of the pastes, told once for all that are alike. */
function assumePastes(colour: Colour | undefined, assumptions: Assumption[]): void {
  const pastes = colour?.pastes ?? [];
  const tubes = pastes.filter((p) => p.assumed).map((p) => `${p.paste.name} in ${p.paste.binder.id}`);
  if (tubes.length > 0)
    assumptions.push({
      field: 'paint',
      value: tubes.join(', '),
      why: 'a pigment named without a paint is taken as a paint of that pigment alone',
    });
  const silent = pastes.filter((p) => !p.paste.oil).map((p) => p.paste.name);
  if (silent.length > 0)
    assumptions.push({
      field: 'oil',
      value: `${silent.join(', ')}: 1.3 times the oil absorption (from 1.1 to 1.8, or to what a workable paint is printed to want)`,
      why: 'the paint states no oil; all pastes are taken as equally stiff',
      source: PASTE_SOURCE,
    });
}

function coatFilm(layer: Layer, coats: number, assumptions: Assumption[]): Interval {
  const { film } = layer;
  const material = layer.material?.is;
  if (film && film.given !== 'unknown') {
    const value = believed(film.value, BELIEVED.film);
    if (film.given === 'word')
      assumptions.push({
        field: 'film',
        value: `${value.low} to ${value.high} µm`,
        why: `‘${film.words}’ is read as this range`,
      });
    return value;
  }
  const whole = material && {
    low: material.film.low,
    likely: (material.film.low + material.film.high) / 2,
    high: material.film.high,
  };
  // The table's film is that of a finished ground or size, however often it was laid.
  const shared = whole !== undefined && coats > 1 && (layer.kind === 'ground' || layer.kind === 'size');
  const value = whole ? believed(shared ? scale(whole, 1 / coats) : whole, BELIEVED.film) : FILM[layer.kind];
  const told = shared ? whole : value;
  assumptions.push({
    field: 'film',
    value: `${told.likely} µm (${told.low} to ${told.high})${shared ? `, shared by ${coats} coats` : ''}`,
    why: film
      ? 'its thickness is not known; this is usual for such a layer'
      : 'the layer states no film; this is usual for its kind',
    source: material?.film.source ?? FILM_SOURCE,
  });
  return value;
}

function coatCount(layer: Layer, kind: Plan['kind'], assumptions: Assumption[]): number {
  const { coats } = layer;
  if (coats && coats.given !== 'unknown') return Math.round(believed(coats.value, BELIEVED.coats).likely);
  if (coats || kind === 'plan')
    assumptions.push({
      field: 'coats',
      value: '1',
      why: coats ? 'their number is not known' : 'the layer states no number of coats',
    });
  return 1;
}

/** A film stated as one figure is laid thicker and thinner by about a third (assumption); a range speaks for itself. */
const HAND = Math.log(1.3);
const WIDEST = Math.log(5);

/** ln of the factor by which a film may be off its likely thickness. */
export function mayBeThicker(layer: Layer, { coat }: LayerFilm): number {
  if (layer.film?.given === 'exact') return HAND;
  const wide = Math.max(Math.log(coat.high / coat.likely), Math.log(coat.likely / coat.low));
  return Math.min(WIDEST, Math.max(wide, 0.01));
}
