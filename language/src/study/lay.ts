/** What each layer does to the colour beneath it: an opaque surface, a film that lets light through, or nothing. */

import type { GroundMaterial, Pigment } from '../materials/types.ts';
import type { Placeless } from '../memory/key.ts';
import { parseColour } from '../optics/css.ts';
import type { Confidence, OpticalData } from '../optics/data.ts';
import { opticalData } from '../optics/data.ts';
import { strengthOf } from '../optics/film.ts';
import type { FilmPigment } from '../optics/stack.ts';
import { GLOSS, MATT, type Surface } from '../optics/surface.ts';
import type { Layer, LayerKind, Measure, OwnPigment, Plan } from '../plan/plan.ts';
import type { Composition } from '../results/study.ts';
import { coloursOf, type LayerFilm, mayBeThicker } from './film.ts';

/** A pigment of a film that is the painter's own, and its optical data where there are any. */
export interface OwnOptics {
  readonly pigment: Pigment;
  readonly name: string;
  readonly optical?: OpticalData;
}

/** All that a layer's look is computed from, names resolved. */
export interface LayPlan {
  readonly kind: LayerKind;
  readonly name: string;
  readonly colour?:
    | { readonly kind: 'formula' | 'unknown' }
    | { readonly kind: 'value'; readonly css: string };
  readonly material?: GroundMaterial;
  readonly film: LayerFilm;
  /** how its film is written, where it is */
  readonly given?: Measure['given'];
  readonly own: readonly OwnOptics[];
  /** how the plan wants colours compared, where it says so */
  readonly wanted?: Surface;
}

/** `film` is the layer's, perhaps remembered from an earlier reading; `optics` tells what an own pigment looks like now. */
export function layPlan(
  layer: Layer,
  film: LayerFilm,
  wanted: Surface | undefined,
  optics: (own: OwnPigment) => OpticalData | undefined,
): LayPlan {
  const { kind, name, colour } = layer;
  const now = coloursOf(layer)?.pastes;
  return {
    kind,
    name,
    colour:
      colour?.kind === 'value' ? { kind: 'value', css: colour.value.css } : colour && { kind: colour.kind },
    material: layer.material?.is,
    film,
    given: layer.film?.given,
    own: film.pastes.flatMap(({ paste }, i) =>
      paste.pigments.flatMap(({ pigment }, j) => {
        const own = now?.[i]?.own[j];
        return own ? [{ pigment, name: own.name, optical: optics(own) }] : [];
      }),
    ),
    wanted,
  };
}

type Lab = readonly [number, number, number];

export type Lay =
  | {
      readonly kind: 'opaque';
      readonly lab: Lab;
      readonly face: Surface;
      readonly confidence: Confidence;
      readonly residual: number;
      readonly basis: readonly string[];
    }
  | {
      readonly kind: 'film';
      readonly pigments: readonly FilmPigment[];
      /** µm, all coats */
      readonly thickness: number;
      /** ln of the factor by which thickness times pigment may be off */
      readonly spread: number;
      readonly face: Surface;
      readonly confidence: Confidence;
      readonly residual: number;
      /** ΔE00 that pigments without optical data may make, whatever shows through */
      readonly doubt: number;
      readonly basis: readonly string[];
    }
  /** Lets through what lies beneath; `face` where it changes the gloss. `doubt`: ΔE00 that what is not known may make. */
  | {
      readonly kind: 'clear';
      readonly face?: Surface;
      readonly doubt: number;
      readonly basis: readonly string[];
    }
  /** Nothing can be said of the colour from here upwards. */
  | { readonly kind: 'unpredictable' };

/** Films with this much more binder than their pigment needs dry with a gloss (common practice). */
const GLOSSY_FROM = 0.3;
/** ΔE00 to expect of a surface's usual colour, of one the painter states, and of what nobody knows. */
const USUAL = 5;
const STATED = 1;
export const UNKNOWN = 12;

const RANK: readonly Confidence[] = ['A', 'B', 'C', 'D'];
export const worse = (a: Confidence, b: Confidence): Confidence =>
  RANK.indexOf(a) >= RANK.indexOf(b) ? a : b;

const clear = (basis: readonly string[] = [], face?: Surface, doubt = 0): Lay => ({
  kind: 'clear',
  face,
  doubt,
  basis,
});

/** How the plan wants colours compared, where it says so. */
export function wantedFace(plan: Plan): Surface | undefined {
  const word = plan.studio.specular?.value;
  return word === undefined ? undefined : word === 'included' ? MATT : GLOSS;
}

/** What lies at the bottom of every area. */
export function bareSupport(plan: Plan): Lay & { readonly kind: 'opaque' } {
  const support = plan.support?.material?.is;
  return {
    kind: 'opaque',
    lab: support?.colour ?? [94, 0, 3],
    face: wantedFace(plan) ?? MATT,
    confidence: support ? 'C' : 'D',
    residual: support ? USUAL : UNKNOWN,
    basis: [support ? `usual colour of ${support.id}` : 'no known support: a white surface is assumed'],
  };
}

export function layOf(layer: Placeless<LayPlan>): Lay {
  const { colour, film, wanted, material } = layer;
  const matt = wanted ?? MATT;
  if (colour?.kind === 'value') {
    const lab = parseColour(colour.css);
    if (!lab) return { kind: 'unpredictable' };
    return {
      kind: 'opaque',
      lab,
      face: matt,
      confidence: 'A',
      residual: STATED,
      basis: ['colour as stated'],
    };
  }
  if (colour?.kind === 'unknown' || film.unknown)
    return clear([`colour of ${layer.name} unknown, taken as transparent`], undefined, UNKNOWN);
  if (colour?.kind === 'formula')
    return film.composition ? filmLay(layer, film.composition) : { kind: 'unpredictable' };

  if (material && layer.kind !== 'drawing') {
    if (material.transparent) return clear();
    const face = wanted ?? (material.kind === 'leaf' ? GLOSS : MATT);
    return {
      kind: 'opaque',
      lab: material.colour,
      face,
      confidence: 'C',
      residual: USUAL,
      basis: [`usual colour of ${material.id}`],
    };
  }
  if (layer.kind === 'varnish' || film.composition) return clear([], wanted ?? GLOSS);
  // Lines of a drawing, a size, an empty layer: what lies beneath stays what it is.
  return clear(
    layer.kind === 'deposit' ? [`colour of ${layer.name} unknown, taken as transparent`] : [],
    undefined,
    layer.kind === 'deposit' ? UNKNOWN : 0,
  );
}

function filmLay({ film, own: owned, given, wanted }: Placeless<LayPlan>, composition: Composition): Lay {
  const pigments: FilmPigment[] = [];
  const basis: string[] = [];
  let confidence: Confidence = 'A';
  let squares = 0;
  let weight = 0;
  let present = 0;
  let missing = 0;
  for (const { pigment, volumeFraction } of composition.pigments) {
    const fraction = volumeFraction.likely;
    if (!(fraction > 0)) continue;
    const own = owned.find((o) => o.pigment === pigment);
    const found: OpticalData | undefined = own ? own.optical : opticalData(pigment.id);
    if (!found) {
      confidence = 'D';
      missing += fraction;
      basis.push(`${pigment.id}: no optical data, left out`);
      continue;
    }
    pigments.push({ optical: found, fraction });
    // A little of a strong colour in much white is unsure as the colour is, not as the white.
    const counts = fraction * strengthOf(found);
    weight += counts;
    present += fraction;
    confidence = worse(confidence, found.confidence);
    squares += counts * found.residual ** 2;
    basis.push(`${own?.name ?? pigment.id}: ${found.basis}`);
  }
  const glossy = composition.fatness.likely >= GLOSSY_FROM;
  return {
    kind: 'film',
    pigments,
    thickness: film.coat.likely * film.coats,
    spread: Math.hypot(mayBeThicker(given, film), pigmentSpread(composition)),
    face: wanted ?? (glossy ? GLOSS : MATT),
    confidence,
    residual: weight > 0 ? Math.sqrt(squares / weight) : 0,
    doubt: missing > 0 ? UNKNOWN * Math.sqrt(missing / (missing + present)) : 0,
    basis,
  };
}

/** ln of the factor by which the pigment in the film may be off: how stiff the paste was, how much medium was taken. */
function pigmentSpread({ paintPvc: pvc }: Composition): number {
  if (!(pvc.likely > 0 && pvc.low > 0)) return 0;
  return Math.min(Math.LN2, Math.max(Math.log(pvc.high / pvc.likely), Math.log(pvc.likely / pvc.low)));
}
