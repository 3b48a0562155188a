/** How thick a film must be to bring what lies beneath to a lightness that is wanted. µm, L* of CIELAB. */

import { exactly, type Interval } from '../materials/interval.ts';
import type { Placeless } from '../memory/key.ts';
import type { Light } from '../optics/cie.ts';
import { plateOf } from '../optics/stack.ts';
import { lay as laid } from '../optics/transport.ts';
import type { LayerKind } from '../plan/plan.ts';
import type { Solved, State } from '../results/state.ts';
import { seen } from './chain.ts';
import { BELIEVED, FILM } from './defaults.ts';
import type { Lay } from './lay.ts';

/** The thinnest coat and the thickest film in all that are thought of, and the steps of the search. */
const [THINNEST, THICKEST] = [BELIEVED.film.low, 300];
const STEP = 1.06;
/** L* within which a wanted lightness counts as reached. */
const NEAR = 0.1;

export interface Wanted {
  readonly below: State;
  /** the layer's film, whatever its thickness */
  readonly lay: Lay & { readonly kind: 'film' };
  readonly light: Light;
  /** L* wanted of the finished layer */
  readonly lightness: Interval;
  readonly kind: LayerKind;
  readonly coats: number;
}

/** The thinnest film with the lightness wanted; where none has it, the nearest of those usual for such a layer. */
export function solved(wanted: Placeless<Wanted>): Solved {
  const { below, lay, light, lightness, coats } = wanted;
  const at = (um: number): number =>
    seen(laid(plateOf({ ...lay, thickness: um, keep: 1 }), below.stack), lay.face, light)[0];
  const least = Math.min(THINNEST * coats, THICKEST);
  const steps = [least];
  for (let um = least * STEP; um < THICKEST; um *= STEP) steps.push(um);
  steps.push(THICKEST);
  const seenAt = steps.map(at);

  const thinnest = (aim: number): number | undefined => {
    if (Math.abs(seenAt[0]! - aim) <= NEAR) return least;
    const i = seenAt.findIndex((l, k) => k > 0 && l - aim > 0 !== seenAt[k - 1]! - aim > 0);
    if (i < 0) return undefined;
    let [low, high] = [steps[i - 1]!, steps[i]!];
    const above = seenAt[i - 1]! > aim;
    for (let n = 0; n < 24; n++) {
      const middle = Math.sqrt(low * high);
      if (at(middle) > aim === above) low = middle;
      else high = middle;
    }
    return Math.sqrt(low * high);
  };

  const beneath = seen(below.stack, below.face, light)[0];
  const likely = thinnest(lightness.likely);
  if (likely !== undefined) {
    const ends = [lightness.low, lightness.high].flatMap((aim) => thinnest(aim) ?? []);
    const coat = {
      low: Math.min(likely, ...ends) / coats,
      likely: likely / coats,
      high: Math.max(likely, ...ends) / coats,
    };
    return { coat, beneath, lightness: at(likely), reached: true };
  }
  const usual = FILM[wanted.kind];
  let nearest = usual.likely;
  let off = Number.POSITIVE_INFINITY;
  for (let um = usual.low; um <= usual.high * 1.0001; um *= STEP) {
    const here = Math.abs(at(um * coats) - lightness.likely);
    if (here < off - 1e-9) [nearest, off] = [um, here];
  }
  return { coat: exactly(nearest), beneath, lightness: at(nearest * coats), reached: false };
}
