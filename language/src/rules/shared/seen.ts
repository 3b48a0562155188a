/** What the eye makes of a layer: helpers of the rules that need predicted colours. CIELAB D65/2°, ΔE00. */
import type { Lab } from '../../optics/cie.ts';
import { deltaE00 } from '../../optics/difference.ts';
import { layOn, toColour, WIPED_OUT_KEEPS } from '../../optics/stack.ts';
import { scaled } from '../../optics/transport.ts';
import type { Layer, Place } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import type { Lay } from '../../study/lay.ts';
import { layWith } from '../../study/what-if.ts';
import { quoted } from './words.ts';

/** Colours before and after a layer on an area, both through the same face: what its pigments do, gloss left out. */
export interface Step {
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaE00: number;
}

export function step(study: Study, index: number, area: string): Step | undefined {
  const below = study.beneath(area, index);
  const above = study.beneath(area, index + 1);
  if (!below || !above) return undefined;
  const before = toColour(below.stack, above.face).lab;
  const after = toColour(above.stack, above.face).lab;
  return { before, after, deltaE00: deltaE00(before, after) };
}

export const wiped = (layer: Layer, area: string): boolean =>
  layer.wipeOut.some((w) => w.areas.includes(area));

/** Indices of the layers on an area, bottom to top. */
export function stackOn(study: Study, area: string): readonly number[] {
  return study.plan.layers.filter((l) => l.areas.includes(area)).map((l) => l.index);
}

const lays = new WeakMap<Layer, Lay>();
/** What a layer does to the light, once for each layer as it stands. */
export function layOfLayer(study: Study, layer: Layer): Lay {
  const known = lays.get(layer);
  if (known) return known;
  const made = layWith(study, layer);
  lays.set(layer, made);
  return made;
}

/** Half a step of light and dark in what lies beneath: about ten of L* at middle greys. */
const MODELLING = 1.25;

/** A light-and-dark step beneath, followed through the layers laid on it. */
export interface Modelling {
  /** lays one more layer on */
  lay(layer: Layer): void;
  /** how much of the step still shows, 0 to 1; undefined where there is none to begin with */
  kept(): number | undefined;
}

/**
 * The step that lies beneath a layer on an area, before that layer. Undefined where nothing can be predicted. The layers
 * laid on it need not be those of the plan.
 */
export function modelling(study: Study, area: string, first: Layer): Modelling | undefined {
  const below = study.beneath(area, first.index);
  const face = study.beneath(area, first.index + 1)?.face;
  if (!below || !face) return undefined;
  const light = scaled(below.stack, MODELLING);
  const dark = scaled(below.stack, 1 / MODELLING);
  const apart = (): number => toColour(light, face).lab[0] - toColour(dark, face).lab[0];
  const before = apart();
  return {
    lay(layer) {
      const lay = layOfLayer(study, layer);
      if (lay.kind !== 'film') return;
      const film = {
        pigments: lay.pigments,
        thickness: lay.thickness,
        keep: wiped(layer, area) ? WIPED_OUT_KEEPS : 1,
      };
      layOn(film, light, light);
      layOn(film, dark, dark);
    },
    kept: () => (before > 0.5 ? Math.max(0, apart()) / before : undefined),
  };
}

/** How much of a step beneath shows through one layer, 0 to 1. */
export function modellingKept(study: Study, area: string, layer: Layer): number | undefined {
  const beneath = modelling(study, area, layer);
  beneath?.lay(layer);
  return beneath?.kept();
}

/** Films that add no colour of their own to what lies beneath: clear, or unpigmented. */
export const isClear = (study: Study, layer: Layer): boolean => layOfLayer(study, layer).kind === 'clear';

/** The run of glazes that ends an area's build-up (varnish and clear films aside), bottom to top. */
export function glazesOnTop(study: Study, area: string): readonly number[] {
  const run: number[] = [];
  for (const index of stackOn(study, area).toReversed()) {
    const layer = study.plan.layers[index];
    if (!layer) break;
    if (layer.kind === 'varnish' || (layer.kind !== 'glaze' && isClear(study, layer))) continue;
    if (layer.kind !== 'glaze') break;
    run.push(index);
  }
  return run.reverse();
}

/** The layer right beneath, as a place to point at; none on the bare support. */
export function beneathOf(
  study: Study,
  index: number,
  area: string,
): { readonly message: string; readonly place: Place }[] {
  const below = study.plan.layers[study.layers[index]?.below.get(area)?.[0] ?? -1];
  return below ? [{ message: `${quoted(below.name)} lies beneath`, place: below.namePlace }] : [];
}

export const lightness = (lab: readonly [number, number, number]): string => `L* ${Math.round(lab[0])}`;
