/** The film of one layer: what it is composed of, how thick it lies, and what had to be assumed for that. */
import { compose } from '../film/compose.ts';
import type { FilmInput, LiquidPart } from '../film/input.ts';
import { pasteFactor } from '../film/paste.ts';
import { isWipedOff, RESIDUE } from '../film/residue.ts';
import { solvent } from '../materials/catalogue.ts';
import { exactly, type Interval, scale } from '../materials/interval.ts';
import type { GroundMaterial, Pigment } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import type { Effect, EffectFound, FilmMeasure, Layer, LayerKind, Measure, Plan } from '../plan/plan.ts';
import type { Assumption, Composition } from '../results/study.ts';
import { BELIEVED, believed, FILM, FILM_SOURCE, PASTE_SOURCE } from './defaults.ts';
import {
  type Colour,
  colourOf,
  holdsUnknown,
  mediumOf,
  type Share,
  tubeBinder,
  UNNAMED_OIL,
  wipedLiquids,
  withoutProportions,
} from './recipe.ts';

export interface LayerFilm {
  readonly composition?: Composition;
  /** paints in it, for colour */
  readonly pastes: readonly Pasted[];
  /** it holds a paint nobody knows the composition of */
  readonly unknown: boolean;
  readonly coats: number;
  /** µm of one coat */
  readonly coat: Interval;
  /** µm of all coats */
  readonly dryFilm: Interval;
  readonly assumptions: readonly Assumption[];
}

type Pasted = Pick<Share, 'paste' | 'volume' | 'assumed'>;

/** All that a film is computed from, names resolved. */
export interface FilmPlan {
  readonly kind: LayerKind;
  readonly in: Plan['kind'];
  readonly colour: {
    readonly is: 'pastes' | 'none' | 'stated' | 'unresolved' | 'not known';
    readonly pastes: readonly Pasted[];
    /** it holds a paint nobody knows the composition of */
    readonly unknownPaint: boolean;
    /** a record's, without amounts */
    readonly noProportions: boolean;
  };
  readonly medium:
    | { readonly is: 'liquids'; readonly name: string; readonly parts: readonly LiquidPart[] }
    | { readonly is: 'none' | 'unresolved' };
  /** liquids rubbed on before each coat and wiped off */
  readonly wipedOn: readonly { readonly name: string; readonly parts: readonly LiquidPart[] }[];
  readonly share?: Measure;
  readonly film?: FilmMeasure;
  readonly coats?: Measure;
  readonly material?: GroundMaterial;
}

const worked = new WeakMap<Layer, { readonly colour: Colour | undefined }>();

/** The paints of a layer's colour, worked out; undefined where it has none or they are not known. */
export function coloursOf(layer: Layer): Colour | undefined {
  const known = worked.get(layer);
  if (known) return known.colour;
  const formula = layer.colour?.kind === 'formula' ? layer.colour.formula : undefined;
  const colour = formula && colourOf(formula, tubeBinder(layer.material?.is?.id));
  worked.set(layer, { colour });
  return colour;
}

function colourPlan(layer: Layer, kind: Plan['kind']): FilmPlan['colour'] {
  const { colour } = layer;
  const silent = { pastes: [], unknownPaint: false, noProportions: false };
  if (colour?.kind !== 'formula') return { ...silent, is: colour ? 'stated' : 'none' };
  const unknownPaint = holdsUnknown(colour.formula);
  const noProportions = kind === 'record' && withoutProportions(colour.formula);
  if (unknownPaint || noProportions) return { is: 'not known', pastes: [], unknownPaint, noProportions };
  const pastes = coloursOf(layer)?.pastes.map(({ paste, volume, assumed }) => ({ paste, volume, assumed }));
  return pastes ? { ...silent, is: 'pastes', pastes } : { ...silent, is: 'unresolved' };
}

function mediumPlan({ medium }: Layer): FilmPlan['medium'] {
  if (!medium) return { is: 'none' };
  const liquids = mediumOf(medium);
  return liquids ? { is: 'liquids', name: liquids.name, parts: liquids.parts } : { is: 'unresolved' };
}

function wipedOn({ prepare }: Layer): FilmPlan['wipedOn'] {
  return prepare.flatMap(({ method, agent }) => {
    if (!method || !isWipedOff(method)) return [];
    const liquids = agent
      ? wipedLiquids(agent)
      : method === 'oil-out'
        ? wipedLiquids(UNNAMED_OIL)
        : undefined;
    return liquids?.parts.some((p) => p.liquid.kind === 'binder')
      ? [{ name: agent?.name ?? 'oil', parts: liquids.parts }]
      : [];
  });
}

export function filmPlan(layer: Layer, kind: Plan['kind']): FilmPlan {
  return {
    kind: layer.kind,
    in: kind,
    colour: colourPlan(layer, kind),
    medium: mediumPlan(layer),
    wipedOn: wipedOn(layer),
    share: layer.medium?.share,
    film: layer.film,
    coats: layer.coats,
    material: layer.material?.is,
  };
}

type Planned = Placeless<FilmPlan>;

export function filmOf(plan: Planned, likelyOnly = false): LayerFilm {
  const { colour, medium } = plan;
  const assumptions: Assumption[] = [];
  const counted: Assumption[] = [];
  const times = coatCount(plan, counted);
  const coat = coatFilm(plan, times, assumptions);
  assumptions.push(...counted);
  if (colour.noProportions)
    assumptions.push({
      field: 'colour',
      value: 'no proportions',
      why: 'a record’s formula without amounts names what is there and no more',
    });
  if (colour.unknownPaint)
    assumptions.push({
      field: 'colour',
      value: 'unknown',
      why: 'of a paint in it nobody knows the composition',
    });
  const { pastes } = colour;
  if (!likelyOnly) assumePastes(pastes, assumptions);
  const broken = colour.is === 'unresolved' || medium.is === 'unresolved';
  // Where a layer says nothing of its colour but names a medium, it is a layer of that medium: an oiling out, a varnish.
  const composable = !broken && (colour.is === 'pastes' || (colour.is === 'none' && medium.is === 'liquids'));
  const made = composable ? composition(plan, pastes, coat, assumptions, likelyOnly) : undefined;
  const whole = made?.dryFilm ?? coat;
  return {
    composition: made,
    pastes,
    unknown: colour.unknownPaint,
    coats: times,
    coat: whole,
    dryFilm: scale(whole, times),
    assumptions,
  };
}

/** A layer's film, computed anew: for layers that stand in no plan. `likelyOnly`: no figure of it has ends, and nothing is told of its pastes. */
export const filmOfLayer = (layer: Layer, kind: Plan['kind'], likelyOnly = false): LayerFilm =>
  filmOf(filmPlan(layer, kind), likelyOnly);

function composition(
  { kind, medium, share: stated, wipedOn: residues }: Planned,
  pastes: LayerFilm['pastes'],
  coat: Interval,
  assumptions: Assumption[],
  likelyOnly: boolean,
) {
  let share = exactly(0);
  if (medium.is === 'liquids') {
    if (stated) share = believed(stated.value, BELIEVED.share);
    else if (pastes.length === 0) share = exactly(1);
    else {
      share = { low: 0.1, likely: 0.25, high: 0.5 };
      assumptions.push({
        field: 'medium',
        value: '25 % (10 to 50 %)',
        why: 'the layer names a medium and no share of it',
      });
    }
  } else if (pastes.length > 0 && kind !== 'ground') {
    assumptions.push({
      field: 'medium',
      value: 'none',
      why: 'the layer names no medium: paint as it comes from the tube',
    });
  }
  if (residues.length > 0)
    assumptions.push({
      field: 'prepare',
      value: `about ${RESIDUE.likely * residues.length} µm (${Number((RESIDUE.low * residues.length).toPrecision(2))} to ${RESIDUE.high * residues.length}) of ${residues.map((r) => r.name).join(' and ')} stay${residues.length === 1 ? 's' : ''}`,
      why: 'what the cloth leaves goes into the coat laid on it',
      source: RESIDUE.source,
    });
  const input: FilmInput = {
    pastes,
    medium: medium.is === 'liquids' ? medium : undefined,
    mediumShare: share,
    dryFilm: coat,
    residues: residues.map(({ parts }) => ({ parts, film: RESIDUE })),
    solvent,
  };
  return compose(input, likelyOnly);
}

/** `1.3 (1.1 to 1.8) times the oil absorption`; where families differ, each with the pigments it is meant for. */
function timesOilAbsorption(pigments: readonly Pigment[]): string {
  const families = new Map<string, Set<string>>();
  const round = (x: number) => Math.round(10 * x) / 10;
  for (const p of pigments) {
    const [low, likely, high] = ([-1, 0, 1] as const).map((end) => round(pasteFactor(p, end)));
    const times = `${likely} (${low} to ${high})`;
    families.set(times, (families.get(times) ?? new Set()).add(p.id));
  }
  const [only] = families.size === 1 ? families.keys() : [];
  const each = [...families].map(([times, ids]) => `${[...ids].join(', ')} ${times}`);
  return `${only ?? each.join('; ')} times the oil absorption`;
}

/** What is assumed of the pastes, told once for all that are alike. */
function assumePastes(pastes: LayerFilm['pastes'], assumptions: Assumption[]): void {
  const tubes = pastes.filter((p) => p.assumed).map((p) => `${p.paste.name} in ${p.paste.binder.id}`);
  if (tubes.length > 0)
    assumptions.push({
      field: 'paint',
      value: tubes.join(', '),
      why: 'a pigment named without a paint is taken as a paint of that pigment alone',
    });
  const silent = pastes.flatMap((p) => (p.paste.oil ? [] : [p.paste]));
  if (silent.length > 0)
    assumptions.push({
      field: 'oil',
      value: `${silent.map((p) => p.name).join(', ')}: ${timesOilAbsorption(silent.flatMap((p) => p.pigments.map((q) => q.pigment)))}`,
      why: 'the paint states no oil; all pastes are taken as equally stiff',
      source: PASTE_SOURCE,
    });
}

function coatFilm({ film, material, kind }: Planned, coats: number, assumptions: Assumption[]): Interval {
  const effect = film?.effect;
  if (film && film.given !== 'unknown' && !(effect && !effect.found)) {
    const value = believed(film.value, BELIEVED.film);
    if (effect?.found) assumptions.push(solvedFor(value, effect, effect.found));
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
  const shared = whole !== undefined && coats > 1 && (kind === 'ground' || kind === 'size');
  const value = whole ? believed(shared ? scale(whole, 1 / coats) : whole, BELIEVED.film) : FILM[kind];
  const told = shared ? whole : value;
  assumptions.push({
    field: 'film',
    value: `${told.likely} µm (${told.low} to ${told.high})${shared ? `, shared by ${coats} coats` : ''}`,
    why: effect
      ? 'no colour can be predicted where its lightness is wanted; this is usual for such a layer'
      : film
        ? 'its thickness is not known; this is usual for such a layer'
        : 'the layer states no film; this is usual for its kind',
    source: material?.film.source ?? FILM_SOURCE,
  });
  return value;
}

/** `6.2 µm` for L* 60 in ‘sky’. */
function solvedFor(
  { low, likely, high }: Interval,
  { lightness }: Placeless<Effect>,
  found: EffectFound,
): Assumption {
  const um = (x: number) => String(Number(x.toPrecision(2)));
  const range = um(low) === um(high) ? '' : ` (${um(low)} to ${um(high)})`;
  const where = `L* ${lightness.words} in ‘${found.area}’`;
  return {
    field: 'film',
    value: `${um(likely)} µm${range}`,
    why: found.reached ? `for ${where}` : `nearest of usual films to ${where}, which none reaches`,
  };
}

function coatCount({ coats, in: kind }: Planned, assumptions: Assumption[]): number {
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
export function mayBeThicker(given: Measure['given'] | undefined, { coat }: LayerFilm): number {
  if (given === 'exact') return HAND;
  const wide = Math.max(Math.log(coat.high / coat.likely), Math.log(coat.likely / coat.low));
  return Math.min(WIDEST, Math.max(wide, 0.01));
}
