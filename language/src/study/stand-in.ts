/** Pigments that could stand in for one of a layer's own, by the colour the layer then has where it lies. Pure search. */
import type { Pigment } from '../materials/types.ts';
import type { Lab } from '../optics/cie.ts';
import { deltaE00 } from '../optics/difference.ts';
import { layOn, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import { newStack } from '../optics/transport.ts';
import type { Formula, Ingredient, Layer, Mix, Paint } from '../plan/plan.ts';
import type { State, Study } from '../results/study.ts';
import { after, createColourMemo, seen } from './chain.ts';
import { type Lay, wantedFace } from './lay.ts';
import { layWith } from './what-if.ts';

/** A pigment in place of another, in the same film of the same paints on the same ground. */
export interface StandIn {
  readonly pigment: Pigment;
  /** CIEDE2000 between the layer as it is and with this pigment in, right after it is laid */
  readonly deltaE00: number;
  /** ΔE00 by which the difference may be off: what the optical data of both leave open; all else is the same for both */
  readonly radius: number;
  /** volume of pigment over that of the dry film, with it and as it is; likely */
  readonly pvc: number;
  readonly pvcBefore: number;
}

/** Whether it can be bought today, as far as the catalogue knows. */
export const isSold = ({ used }: Pigment): boolean => used.to === undefined;

/** Where the difference is looked for: the first area on which the whole film stays. */
export const areaOf = ({ areas, wipeOut }: Layer): string | undefined =>
  areas.find((a) => !wipeOut.some((w) => w.areas.includes(a))) ?? areas[0];

/** The layer with another pigment in place of some words of its formulas. */
export function withPigment(layer: Layer, words: ReadonlySet<Ingredient>, pigment: Pigment): Layer {
  if (layer.colour?.kind !== 'formula') return layer;
  const made = new Map<Formula, Formula>();
  const word = (ingredient: Ingredient): Ingredient => {
    const { is } = ingredient;
    if (words.has(ingredient))
      return { name: pigment.id, place: ingredient.place, is: { kind: 'pigment', pigment } };
    if (is.kind === 'paint') {
      // the oil a painter states is that of the tube exchanged
      const paint = changed<Paint>(is.paint, { oil: undefined });
      return paint === is.paint ? ingredient : { ...ingredient, is: { kind: 'paint', paint } };
    }
    if (is.kind !== 'mix') return ingredient;
    const mix = changed<Mix>(is.mix);
    return mix === is.mix ? ingredient : { ...ingredient, is: { kind: 'mix', mix } };
  };
  const changed = <D extends { readonly formula?: Formula }>(declared: D, also: Partial<D> = {}): D => {
    const formula = declared.formula && put(declared.formula);
    return formula === declared.formula ? declared : { ...declared, ...also, formula };
  };
  const put = (formula: Formula): Formula => {
    const known = made.get(formula);
    if (known) return known;
    // what leads back to itself stays as it is
    made.set(formula, formula);
    const parts = formula.parts.map((part) => {
      const ingredient = word(part.ingredient);
      return ingredient === part.ingredient ? part : { ...part, ingredient };
    });
    if (parts.some((p, i) => p !== formula.parts[i])) made.set(formula, { ...formula, parts });
    return made.get(formula) ?? formula;
  };
  return { ...layer, colour: { kind: 'formula', formula: put(layer.colour.formula) } };
}

interface Tried {
  readonly lay: Lay & { readonly kind: 'film' };
  readonly lab: Lab;
}

/** One use of a pigment: what was tried in its place, each once. */
interface Use {
  readonly below: State;
  readonly wiped: boolean;
  readonly own: Tried;
  readonly tried: Map<Pigment, Tried | undefined>;
}

const uses = new WeakMap<Study, WeakMap<ReadonlySet<Ingredient>, Use | undefined>>();

const once = (make: () => number): (() => number) => {
  let made: number | undefined;
  return () => {
    made ??= make();
    return made;
  };
};

const stack = newStack();

function look(study: Study, layer: Layer, below: State, wiped: boolean): Tried | undefined {
  const { plan } = study;
  const lay = layWith(study, layer, wantedFace(plan), true);
  if (lay.kind !== 'film' || lay.doubt > 0) return undefined;
  layOn({ ...lay, keep: wiped ? WIPED_OUT_KEEPS : 1 }, below.stack, stack);
  return { lay, lab: seen(stack, lay.face, plan.studio.lightSource?.value ?? 'D65') };
}

function useOf(study: Study, layer: Layer, words: ReadonlySet<Ingredient>): Use | undefined {
  const known = uses.get(study) ?? new WeakMap<ReadonlySet<Ingredient>, Use | undefined>();
  uses.set(study, known);
  if (known.has(words)) return known.get(words);
  const area = areaOf(layer);
  const below = area === undefined ? undefined : study.beneath(area, layer.index);
  const wiped = layer.wipeOut.some((w) => area !== undefined && w.areas.includes(area));
  const own = below && look(study, layer, below, wiped);
  const use = below && own && { below, wiped, own, tried: new Map() };
  known.set(words, use);
  return use;
}

/**
 * Which of `candidates` come nearest in place of `words` of a layer, nearest first, each worked out once for a study and
 * the same set of words. None where no colour can be predicted.
 */
export function standIns(
  study: Study,
  layer: Layer,
  words: ReadonlySet<Ingredient>,
  candidates: Iterable<Pigment>,
): readonly StandIn[] {
  const use = useOf(study, layer, words);
  if (!use) return [];
  const { below, wiped, own, tried } = use;
  const found: (Tried & { readonly pigment: Pigment; readonly off: number })[] = [];
  for (const pigment of candidates) {
    if (!tried.has(pigment))
      tried.set(pigment, look(study, withPigment(layer, words, pigment), below, wiped));
    const one = tried.get(pigment);
    if (one) found.push({ ...one, pigment, off: deltaE00(own.lab, one.lab) });
  }
  found.sort((a, b) => a.off - b.off || (a.pigment.id < b.pigment.id ? -1 : 1));
  const before = once(() => residual(use, own.lay));
  return found.map(({ pigment, lay, off }) => ({
    pigment,
    deltaE00: off,
    get radius() {
      return Math.max(1, Math.hypot(before(), residual(use, lay)));
    },
    pvc: pigmentIn(lay),
    pvcBefore: pigmentIn(own.lay),
  }));
}

const pigmentIn = ({ pigments }: Tried['lay']): number => pigments.reduce((sum, p) => sum + p.fraction, 0);

/** ΔE00 to expect from the data of the film itself. What lies beneath is the same for all, whatever is not known of it. */
const residual = ({ below, wiped }: Use, lay: Lay): number =>
  after(createColourMemo(), { ...below, residual: 0 }, lay, wiped)?.residual ?? 0;
