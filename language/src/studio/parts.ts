/**
 * What to mix at a sitting, as a painter measures it: `mixtures(study, sitting.entries)`, one mixture for every heap of
 * paint, whichever layers of that day it goes into. `parts` are whole numbers within `WITHIN` of the wanted shares, the
 * plan's own where it writes whole ones; `portions` stand in the order of mixing, white or the weakest first; `letDowns`
 * and `together` tell how to get there where a strong colour is too little to be divided off. `partsWords`, `letDownWords`
 * and `mediumWords` say it in words, `mixWords` as sentences. Volumes in ml, waste included, absent where the support has no size.
 */

import { type Interval, plus, scale } from '../materials/interval.ts';
import { opticalData } from '../optics/data.ts';
import type { Formula, Layer } from '../plan/plan.ts';
import type { CalendarEntry, LayerStudy, Study } from '../results/study.ts';
import { recipeParts } from './density.ts';
import { dropWords, familiarSize } from './familiar-sizes.ts';
import { errorOf, letDownsFor, partsTogether, roundParts, wholeParts } from './round-parts.ts';
import { coatVolume, supportArea } from './surface.ts';
import { figureWords } from './words.ts';

export interface Portion {
  readonly name: string;
  readonly parts: number;
  /** wanted, of the paint in the heap by volume */
  readonly share: number;
  /** absorption per µm on the average of the visible bands; absent where the colour is not known */
  readonly strength?: number;
}

/** 1 part of a strong colour into `of` parts of another. */
export interface LetDown {
  readonly name: string;
  readonly into: string;
  readonly of: number;
}

/** A medium for some or all of a heap. */
export interface MediumPortion {
  readonly name: string;
  /** layers it is for */
  readonly layers: readonly string[];
  /** of the applied volume */
  readonly share: number;
  /** whole parts of paint to parts of medium; [0, 1] for medium alone */
  readonly parts: readonly [paint: number, medium: number];
  readonly ml?: Interval;
  /** ml, rounded to what can be measured */
  readonly about?: number;
}

export interface Mixture {
  /** of the mix, where one alone is used */
  readonly name?: string;
  /** names of the layers it goes into, in laying order */
  readonly layers: readonly string[];
  /** in the order of mixing; empty for medium alone */
  readonly portions: readonly Portion[];
  /** greatest error of a share that the parts give, as a fraction of it */
  readonly off: number;
  readonly letDowns: readonly LetDown[];
  /** what is laid together when the let-downs are ready; empty where there are none */
  readonly together: readonly { readonly name: string; readonly parts: number; readonly letDown: boolean }[];
  /** of paint, without medium */
  readonly ml?: Interval;
  /** ml of paint, rounded up to what can be measured */
  readonly about?: number;
  readonly mediums: readonly MediumPortion[];
}

type Measured = Pick<Study, 'plan' | 'layers' | 'areas' | 'calibration'>;

/** What a spoon, a syringe or an eye tells apart; more figures would pretend. */
const MEASURES = [1, 1.5, 2, 3, 4, 5, 7, 10];

/** The next of these upwards, since what runs out must be matched again; a hair less is in the waste. */
function measurable(ml: number): number {
  if (!(ml > 0)) return 0;
  const ten = 10 ** Math.floor(Math.log10(ml));
  const step = MEASURES.find((m) => m * ten >= ml * 0.95) ?? 10;
  return Math.max(0.05, Number((step * ten).toPrecision(2)));
}

const total = (a: Interval | undefined, b: Interval | undefined): Interval | undefined =>
  a && b ? plus(a, b) : undefined;

/**
 * Tinting strength of a paint: the absorption of its pigments averaged over 400 to 700 nm, each by its share of the
 * volume. Strengths of tints are compared by absorption so (as ISO 787-24 does by K/S, from memory).
 */
function strengthOf(study: Measured, layer: LayerStudy, name: string): number | undefined {
  const parts = recipeParts(study.plan, layer, name);
  if (!parts) return undefined;
  let strength = 0;
  for (const { pigment, volume } of parts) {
    const own = study.plan.visible.pigments.get(pigment.id);
    const optical = (own && study.calibration(own).data) ?? opticalData(pigment.id);
    if (!optical) return undefined;
    strength += (volume * optical.a.reduce((sum, a) => sum + a, 0)) / optical.a.length;
  }
  return strength;
}

/** The amounts a plan writes, by the paint's name, where they are whole parts of paints. */
function asWritten(formula: Formula | undefined): ReadonlyMap<string, number> | undefined {
  const [only] = formula?.parts ?? [];
  if (only && formula?.parts.length === 1 && only.ingredient.is.kind === 'mix')
    return asWritten(only.ingredient.is.mix.formula);
  if (formula?.amounts !== 'parts') return undefined;
  const parts = wholeParts(formula.parts.map((p) => p.amount?.value ?? 1));
  if (!parts) return undefined;
  const written = new Map<string, number>();
  for (const [i, { ingredient }] of formula.parts.entries()) {
    const { is } = ingredient;
    const name = is.kind === 'paint' ? is.paint.name : is.kind === 'pigment' ? is.pigment.id : undefined;
    if (name === undefined) return undefined;
    written.set(name, (written.get(name) ?? 0) + parts[i]!);
  }
  return written;
}

const formulaOf = ({ colour }: Layer): Formula | undefined =>
  colour?.kind === 'formula' ? colour.formula : undefined;

function mixName(formula: Formula | undefined): string | undefined {
  const is = formula?.parts.length === 1 ? formula.parts[0]?.ingredient.is : undefined;
  return is?.kind === 'mix' ? is.mix.name : undefined;
}

/** A heap of paint with the layers it goes into. */
interface Heap {
  readonly layer: LayerStudy;
  readonly paints: readonly { readonly name: string; readonly share: number }[];
  readonly layers: string[];
  names: (string | undefined)[];
  ml?: Interval;
  readonly mediums: Map<string, { name: string; share: number; layers: string[]; ml?: Interval }>;
}

const known = new WeakMap<Measured, Map<string, ReturnType<typeof divided>>>();

/** How a heap is divided into parts, worked out once for each in a study. */
function divided(study: Measured, { layer, paints }: Heap) {
  const withStrength = paints.map((p) => ({ ...p, strength: strengthOf(study, layer, p.name) }));
  const ordered = withStrength
    .map((p, place) => ({ ...p, place }))
    // of unknown strength: after what is known to be weak, and before nothing that is known to be strong
    .sort((a, b) => (a.strength ?? 0.1) - (b.strength ?? 0.1) || b.share - a.share || a.place - b.place);
  const shares = ordered.map((p) => p.share);
  const written = asWritten(formulaOf(layer.layer));
  const stated = ordered.map((p) => written?.get(p.name) ?? 0);
  const parts = written?.size === ordered.length && stated.every((n) => n > 0) ? stated : roundParts(shares);
  const downs = letDownsFor(
    shares,
    ordered.map((p) => p.strength),
  );
  const together = downs.length > 0 ? partsTogether(shares, downs) : [];
  const isDown = new Set(downs.map((d) => d.strong));
  return {
    portions: ordered.map(
      ({ name, share, strength }, i): Portion => ({ name, parts: parts[i]!, share, strength }),
    ),
    off: errorOf(parts, shares),
    letDowns: downs.map(
      (d): LetDown => ({ name: ordered[d.strong]!.name, into: ordered[d.into]!.name, of: d.of }),
    ),
    together: together.flatMap((n, i) =>
      n > 0 ? [{ name: ordered[i]!.name, parts: n, letDown: isDown.has(i) }] : [],
    ),
  };
}

const key = (paints: Heap['paints']): string =>
  paints
    .map(({ name, share }) => `${name} ${share.toPrecision(9)}`)
    .sort()
    .join(' + ');

/** What the coats of one sitting are mixed of, one mixture a heap, in laying order. */
export function mixtures(study: Measured, entries: readonly CalendarEntry[]): readonly Mixture[] {
  const support = supportArea(study.plan);
  const heaps = new Map<string, Heap>();
  for (const { index } of entries) {
    const layer = study.layers[index];
    const applied = layer?.composition?.applied;
    if (!layer || !applied) continue;
    const colour = applied.filter((a) => a.what === 'paint');
    const whole = colour.reduce((sum, a) => sum + a.share, 0);
    const paints = colour.map(({ name, share }) => ({ name, share: share / whole }));
    const volume = support && coatVolume(study, layer, support);
    const medium = applied.find((a) => a.what === 'medium');
    const id = paints.length > 0 ? key(paints) : `medium ${medium?.name}`;
    const before = heaps.get(id);
    const heap: Heap = before ?? { layer, paints, layers: [], names: [], mediums: new Map() };
    heaps.set(id, heap);
    const ml = volume && scale(volume, whole);
    heap.ml = before ? total(before.ml, ml) : ml;
    heap.names.push(mixName(formulaOf(layer.layer)));
    if (!heap.layers.includes(layer.layer.name)) heap.layers.push(layer.layer.name);
    if (!medium) continue;
    const into = `${medium.name} ${medium.share.toPrecision(9)}`;
    const poured = volume && scale(volume, medium.share);
    const same = heap.mediums.get(into);
    heap.mediums.set(into, {
      name: medium.name,
      share: medium.share,
      layers: [...new Set([...(same?.layers ?? []), layer.layer.name])],
      ml: same ? total(same.ml, poured) : poured,
    });
  }
  const memo = known.get(study) ?? new Map();
  known.set(study, memo);
  return [...heaps].map(([id, heap]): Mixture => {
    const parts = memo.get(id) ?? divided(study, heap);
    memo.set(id, parts);
    const { ml, names, layers } = heap;
    return {
      name: names.every((n) => n === names[0]) ? names[0] : undefined,
      layers,
      ...parts,
      ml,
      about: ml && measurable(ml.likely),
      mediums: [...heap.mediums.values()].map((m): MediumPortion => {
        const [paint = 0, thin = 1] = m.share < 1 ? roundParts([1 - m.share, m.share]) : [0, 1];
        return { ...m, parts: [paint, thin], about: m.ml && measurable(m.ml.likely) };
      }),
    };
  });
}

const LITRE = 1000;
const volumeWords = (ml: number): string =>
  ml >= LITRE ? `about ${figureWords(ml / LITRE)} litres` : `about ${figureWords(ml)} ml`;

const mlWords = (about: number | undefined): string => {
  if (about === undefined) return '';
  const size = familiarSize(about);
  return `, ${volumeWords(about)}${size ? ` (${size})` : ''}`;
};

const joined = (list: readonly { readonly name: string; readonly parts: number }[]): string =>
  list.length === 1 ? list[0]!.name : list.map(({ name, parts }) => `${parts} ${name}`).join(' : ');

/** `3 white : 1 black, about 2 ml (a hazelnut)`; empty for medium alone. */
export const partsWords = ({ portions, about }: Mixture): string =>
  portions.length === 0 ? '' : `${joined(portions)}${mlWords(about)}`;

/** `First mix 1 blue into 10 white, then 2 white : 1 of that.`, where a strong colour is let down. */
export function letDownWords({ letDowns, together }: Mixture): string | undefined {
  if (letDowns.length === 0) return undefined;
  const first = letDowns.map((d) => `1 ${d.name} into ${d.of} ${d.into}`).join(', and ');
  const only = letDowns.length === 1;
  const rest = together.map(
    (p) => `${p.parts} ${p.letDown ? (only ? 'of that' : `of the ${p.name} let down`) : p.name}`,
  );
  return `First mix ${first}${rest.length > 1 ? `, then ${rest.join(' : ')}` : ''}.`;
}

/** `1 lean to 3 of paint, about 0.3 ml (6 drops)`. */
export function mediumWords({ name, parts: [paint, medium], about }: MediumPortion): string {
  const much = about === undefined ? '' : `, ${volumeWords(about)}`;
  const drops = about === undefined ? undefined : dropWords(about);
  return `${paint > 0 ? `${medium} ${name} to ${paint} of paint` : name}${much}${drops ? ` (${drops})` : ''}`;
}

/** What a layer of the sitting takes of a mixture, as sentences: told in full of the first layer, and then only referred to. */
export function mixWords(mixture: Mixture, layer: string): readonly string[] {
  const [first] = mixture.layers;
  const { portions } = mixture;
  const heap =
    portions.length === 0
      ? []
      : first === layer
        ? [
            `${portions.length > 1 ? 'Mix' : 'Take'} ${partsWords(mixture)}.`,
            ...[letDownWords(mixture)].filter((w) => w !== undefined),
          ]
        : [`Take of the mixture for ‘${first}’.`];
  const mediums = mixture.mediums.flatMap((m) =>
    m.layers[0] === layer ? [`${portions.length > 0 ? 'Add' : 'Take'} ${mediumWords(m)}.`] : [],
  );
  return [...heap, ...mediums];
}

/** `about 40 ml (two walnuts)` of what is not mixed. */
export const aboutWords = (ml: Interval): string => mlWords(measurable(ml.likely)).replace(/^, /, '');
