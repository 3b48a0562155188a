/** What each layer does to the colour an area has in the end: it is taken out, and the layers above it are laid anew. */
import type { Lab } from '../optics/cie.ts';
import { deltaE00 } from '../optics/difference.ts';
import { layOn, WIPED_OUT_KEEPS } from '../optics/stack.ts';
import type { Stack } from '../optics/transport.ts';
import type { Layer } from '../plan/plan.ts';
import type { Study } from '../results/study.ts';
import { after, createColourMemo, seen } from './chain.ts';
import type { Lay } from './lay.ts';
import { layWith } from './what-if.ts';

/** One layer's part in the colour of an area; CIELAB D65/2°, gloss as it is in the end. */
export interface Move {
  readonly layer: Layer;
  /** the colour without it */
  readonly without: Lab;
  /** CIEDE2000 by which it moves the colour */
  readonly deltaE00: number;
  /** where to: with it minus without it, in L*, a* and b* */
  readonly direction: Lab;
}

/** Deeper than this below the top no layer is taken out: each costs all that lie above it. */
const DEEPEST = 12;

const known = new WeakMap<Study, Map<string, readonly Move[]>>();

/** The parts of the uppermost layers of an area, bottom to top; none where nothing can be predicted. Once for a study. */
export function moves(study: Study, area: string): readonly Move[] {
  const of = known.get(study) ?? new Map<string, readonly Move[]>();
  known.set(study, of);
  const made = of.get(area) ?? movesOn(study, area);
  of.set(area, made);
  return made;
}

function movesOn(study: Study, area: string): Move[] {
  const { plan } = study;
  const top = study.beneath(area);
  if (!top) return [];
  const layers = plan.layers.filter((l) => l.areas.includes(area)).slice(-DEEPEST);
  const lays = layers.map((l) => layWith(study, l, undefined, true));
  const light = plan.studio.lightSource?.value ?? 'D65';
  const now = seen(top.stack, top.face, light);
  return layers.flatMap((layer, i) => {
    // what lets everything through moves nothing
    if (lays[i]?.kind === 'clear') return [];
    let stack = study.beneath(area, layer.index)?.stack;
    for (let k = i + 1; k < layers.length && stack; k++) stack = above(stack, lays[k]!, layers[k]!, area);
    if (!stack) return [];
    const without = seen(stack, top.face, light);
    const direction: Lab = [now[0] - without[0], now[1] - without[1], now[2] - without[2]];
    return [{ layer, without, deltaE00: deltaE00(now, without), direction }];
  });
}

/** A stack with one more layer on it; undefined where nothing can be said of that. */
function above(stack: Stack, lay: Lay, { wipeOut }: Layer, area: string): Stack | undefined {
  if (lay.kind === 'clear') return stack;
  if (lay.kind !== 'film') return after(createColourMemo(), undefined, lay, false)?.stack;
  return layOn({ ...lay, keep: wipeOut.some((w) => w.areas.includes(area)) ? WIPED_OUT_KEEPS : 1 }, stack);
}
