/** When layers are laid, by the calendar's likely clock or the dates in the plan. Days. */
import type { Fix, Layer } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import { addFields, replace } from './fixes.ts';
import { figure } from './words.ts';

interface Laid {
  readonly first: number;
  readonly last: number;
}

const known = new WeakMap<Study, ReadonlyMap<number, Laid>>();

function laid(study: Study): ReadonlyMap<number, Laid> {
  const remembered = known.get(study);
  if (remembered) return remembered;
  const made = new Map<number, Laid>();
  for (const entry of study.calendar.entries) {
    const at = entry.painted ?? entry.likely;
    if (at === undefined) continue;
    const before = made.get(entry.index);
    made.set(entry.index, { first: before ? Math.min(before.first, at) : at, last: at });
  }
  known.set(study, made);
  return made;
}

/** Days from the last coat of `below` to the first of `upper`; undefined where the calendar has none of them. */
export function daysBetween(study: Study, below: Layer, upper: Layer): number | undefined {
  const all = laid(study);
  const [b, u] = [all.get(below.index), all.get(upper.index)];
  return b && u ? u.first - b.last : undefined;
}

/** Days between the dates written beside both, where both have one. */
export const daysPainted = (below: Layer, upper: Layer): number | undefined =>
  below.painted && upper.painted ? upper.painted.number - below.painted.number : undefined;

/** Whether dates in the plan say that `upper` was laid before `below` was ready. */
export function laidUnready(below: LayerStudy, upper: Layer): boolean {
  const days = daysPainted(below.layer, upper);
  return days !== undefined && below.drying !== undefined && days < below.drying.ready.likely;
}

/** A wait of so many days, in the words of the language. */
export function waitWords(days: number): string {
  const whole = Math.max(1, Math.ceil(days - 1e-9));
  if (whole === 1) return '1 day';
  return whole > 21 ? `${Math.ceil(whole / 7)} weeks` : `${whole} days`;
}

/** `on the same day as`, `1 day after`, `4 days after`. */
export function daysAfter(days: number): string {
  if (days === 0) return 'on the same day as';
  return days === 1 ? '1 day after' : `${figure(days)} days after`;
}

/** Days beyond which nobody plans to wait, and none is told to. */
const LONGEST_WAIT = 366;

/** Lets the layers above wait so many days; none where nobody would. */
export function waitLonger(layer: Layer, days: number): Fix[] {
  if (days > LONGEST_WAIT) return [];
  const words = waitWords(days);
  return layer.wait
    ? [replace(`Wait ${words} after ${layer.name}`, layer.wait.place, words)]
    : addFields(`Wait ${words} after ${layer.name}`, layer, [`wait ${words}`]);
}
