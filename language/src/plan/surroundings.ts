/**
 * Which layers are read from the same words among the same declarations: what is computed of such a layer, places apart,
 * is what was computed before. Nothing is compared but identities, since declarations are remembered by their text.
 */
import type { Parsed } from '../syntax/chunk.ts';
import { isLayerWord } from '../syntax/words.ts';
import type { Layer, Plan, Use } from './plan.ts';
import type { Statement } from './statement.ts';

/** All that a file says outside its layers, of the files it uses too; the same object as long as nothing of it changes. */
export interface Surroundings {
  readonly parts: readonly unknown[];
  /** one object for each wording of a layer */
  readonly layers: WeakMap<Parsed, object>;
}

const around = new WeakMap<Plan, Surroundings>();
const wordings = new WeakMap<Layer, object>();

export function surroundings(
  statements: readonly Statement[],
  uses: readonly Use[],
  before: Surroundings | undefined,
): Surroundings {
  const parts: unknown[] = statements.flatMap((s) => (isLayerWord(s.chunk.word) ? [] : [s.parsed]));
  for (const { status, uri, plan } of uses) parts.push(status, uri, plan && around.get(plan));
  return before && before.parts.length === parts.length && before.parts.every((p, i) => p === parts[i])
    ? before
    : { parts, layers: new WeakMap() };
}

/** What a plan is surrounded by, for the plans that use it. */
export const surround = (plan: Plan, by: Surroundings): Plan => {
  around.set(plan, by);
  return plan;
};

export function wordedAs(layer: Layer, parsed: Parsed, { layers }: Surroundings): void {
  const wording = layers.get(parsed) ?? {};
  layers.set(parsed, wording);
  wordings.set(layer, wording);
}

/** The same object for layers of the same words among the same declarations; none for a layer that no text holds. */
export const wordingOf = (layer: Layer): object | undefined => wordings.get(layer);
