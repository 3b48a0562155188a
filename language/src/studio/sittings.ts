/** What is painted on one day stands together: the coats of a calendar as sittings. Plain data. */
import type { Calendar, CalendarEntry, NotKnown } from '../results/study.ts';
import { HAIR } from './words.ts';

export interface Sitting {
  /** from 1, in the order of the days */
  readonly number: number;
  /** the whole day on which it was, or likely can be, held; absent where `notKnown` says why */
  readonly day?: number;
  readonly notKnown?: NotKnown;
  /** in laying order */
  readonly entries: readonly CalendarEntry[];
}

/** The day a coat was laid, or the first whole day on which it likely can be. */
const dayOf = ({ painted, likely }: CalendarEntry): number | undefined =>
  painted ?? (likely === undefined ? undefined : Math.ceil(likely - HAIR) + 0);

/** Coats whose day nobody can tell come last, a sitting a layer. */
export function sittings({ entries }: Calendar): readonly Sitting[] {
  const together = new Map<string, CalendarEntry[]>();
  for (const entry of entries) {
    const key = `${dayOf(entry) ?? `unknown ${entry.index}`}`;
    const group = together.get(key);
    if (group) group.push(entry);
    else together.set(key, [entry]);
  }
  return [...together.values()]
    .map((group) => ({ day: dayOf(group[0]!), notKnown: group[0]!.notKnown, entries: group }))
    .sort((a, b) => (a.day ?? Number.POSITIVE_INFINITY) - (b.day ?? Number.POSITIVE_INFINITY) || 0)
    .map((sitting, index) => ({ number: index + 1, ...sitting }));
}
