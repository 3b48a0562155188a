/**
 * When each coat may be laid. A layer starts when every layer beneath it, on any area they share, is ready and its
 * `wait` is over; `after` counts from the day the layer beneath was laid. Three clocks run side by side: not before,
 * likely, safe from; the first and the last stand as far from the likely day as partly independent errors add up to
 * (`drying/spread.ts`). What was painted fixes all three for what lies above it.
 */
import { after as andThen, fixed, isLater, latest, type Spread } from '../drying/spread.ts';
import { exactly, type Interval } from '../materials/interval.ts';
import { linesOf } from '../plan/lines.ts';
import type { Place, Plan } from '../plan/plan.ts';
import type { Calendar, CalendarEntry, LayerStudy, NotKnown } from '../results/study.ts';
import { timeWords } from '../studio/words.ts';
import { BELIEVED, believed } from './defaults.ts';
import { paintAndMedium } from './drying.ts';
import type { Stacks } from './stacks.ts';

/** Coats of one layer that are told one by one; of more, the first ones and the last. */
export const COATS_TOLD = 100;

/** 9999-12-31, the last day ISO 8601 writes with four digits; counted from the first day where there is no date. */
const LAST_DAY = 2_932_896;

const clocks = (f: (end: keyof Interval) => number): Interval => ({
  low: f('low'),
  likely: f('likely'),
  high: f('high'),
});
const later = (x: Interval, y: Interval): Interval => clocks((end) => Math.max(x[end], y[end]));
const capped = (x: number): number => Math.min(LAST_DAY, x);

/** Of a layer: safe-from of its first coat, when it lets the next follow on the slow clock, and its last entry. */
interface Safe {
  readonly from?: number;
  readonly free?: number;
  readonly last: number;
}

const NOBODY = 'nobody can tell when it is ready';

function lookAt(lines: ReturnType<typeof linesOf>, layer: string, place: Place): NotKnown {
  const { line, column } = lines.at(place.start);
  return { layer, place, line: line + 1, column: column + 1 };
}

/** What an area is waiting for. */
interface Track {
  /** index of the layer on top, −1 for the bare support */
  readonly layer: number;
  /** when its last coat was laid, and when the next layer may follow */
  readonly laid: Spread;
  readonly free: Spread;
  readonly reason: string;
  /** nobody can tell when, and this is why; `laid` and `free` then mean nothing */
  readonly notKnown?: NotKnown;
}

function readyWords(x: Interval): string {
  if (x.high === 0) return 'at once';
  return x.low === 0 ? `at once to ${timeWords(exactly(x.high))}` : `in ${timeWords(x)}`;
}

export function calendarOf(plan: Plan, layers: readonly LayerStudy[], stacks: Stacks): Calendar {
  const lines = linesOf(plan.text ?? '');
  if (plan.kind !== 'plan') return { dated: false, entries: [] };
  const painted = layers.flatMap((l) => l.layer.painted?.number ?? []);
  const dated = plan.start !== undefined || painted.length > 0;
  const first = plan.start?.number ?? (painted.length > 0 ? painted.reduce((a, b) => Math.min(a, b)) : 0);
  const start = fixed(first);
  const tracks = new Map<string, Track>();
  const entries: CalendarEntry[] = [];
  const safe: Safe[] = [];

  for (const [index, study] of layers.entries()) {
    const { layer, drying } = study;
    if (layer.areas.length === 0) {
      // it lies nowhere: there is nothing to wait for, and no sitting to plan
      safe.push({ from: first, free: first, last: -1 });
      continue;
    }
    const wait = layer.wait ? believed(layer.wait.value, BELIEVED.days) : undefined;
    const wanted = layer.after ? believed(layer.after.value, BELIEVED.days) : undefined;

    // Boards are bought primed: a ground may be older than the plan.
    const { number: dayPainted = first } = layer.painted ?? {};
    const bought = dayPainted < first && (layer.kind === 'ground' || layer.kind === 'size');
    let free = bought ? fixed(dayPainted) : start;
    let held: CalendarEntry['heldBy'];
    let beneath: NotKnown | undefined;
    let blocked: CalendarEntry['heldBy'];
    for (const area of layer.areas) {
      const track = tracks.get(area);
      if (!track) continue;
      if (track.notKnown) {
        beneath ??= track.notKnown;
        blocked ??= { layer: track.notKnown.layer, area, reason: NOBODY };
        continue;
      }
      const behind = wanted && andThen(track.laid, wanted, layer.name);
      const here = behind ? latest(track.free, behind) : track.free;
      if (isLater(here, free)) {
        const reason =
          behind && isLater(behind, track.free) ? `wait ${layer.after?.words ?? ''} after it` : track.reason;
        held = { layer: layers[track.layer]!.layer.name, area, reason };
      }
      free = latest(free, here);
    }

    // Coats of one layer follow each other as it dries; the painter's own wait is before the next layer.
    const ready = drying?.ready ?? { low: 0, likely: 0, high: 0 };
    const step = drying?.nextCoat ?? ready;
    const reason =
      wait && wait.high >= ready.high
        ? `wait ${layer.wait?.words ?? timeWords(exactly(wait.likely))}`
        : `ready ${readyWords(ready)}`;
    const { coats } = study;
    const day = layer.painted?.number;
    const own = {
      layer: layer.name,
      area: layer.areas[0] ?? '',
      reason: `coat before it: ${drying?.nextCoat ? 'next coat' : 'ready'} ${readyWords(step)}`,
    };
    const itself = study.notKnown && lookAt(lines, layer.name, study.notKnown);
    const what = paintAndMedium(study) ?? layer.material?.name ?? layer.name;
    const coatAt = (n: number): Spread => andThen(free, step, what, n - 1);
    for (let n = 1; n <= coats; n++) {
      if (n === COATS_TOLD && coats > COATS_TOLD) n = coats;
      const at = coatAt(n);
      const notKnown = beneath ?? (n > 1 ? itself : undefined);
      // One date for a layer of many coats is the day it was done.
      const painted = day !== undefined && n === coats ? { painted: day } : undefined;
      entries.push(
        notKnown
          ? {
              layer: layer.name,
              index,
              coat: n,
              notKnown,
              heldBy: blocked ?? { ...own, reason: `coat before it: ${NOBODY}` },
              ...painted,
            }
          : {
              layer: layer.name,
              index,
              coat: n,
              notBefore: capped(at.low),
              likely: capped(at.likely),
              safeFrom: capped(at.high),
              heldBy: n === 1 ? held : own,
              ...(painted ? { ...painted, daysToSpare: painted.painted - capped(at.high) } : {}),
            },
      );
    }

    const laid = day === undefined ? coatAt(coats) : fixed(day);
    // painted before what lies beneath can have been: what comes next still waits for that
    const tooEarly = day !== undefined && !beneath && day < free.low;
    const dry = andThen(laid, wait ? later(ready, wait) : ready, what);
    // what was painted has been painted, whatever lies beneath: what comes next waits for this layer alone
    const notKnown = itself ?? (day === undefined ? beneath : undefined);
    const track: Track = { layer: index, laid, free: tooEarly ? latest(free, dry) : dry, reason, notKnown };
    for (const area of layer.areas) tracks.set(area, track);
    safe.push({
      from: beneath ? undefined : capped(free.high),
      free: notKnown ? undefined : capped(track.free.high),
      last: entries.length - 1,
    });
  }

  spare(layers, stacks, safe, entries);
  return { dated, entries };
}

/** Days the last coat of a layer may be late on the slow clock before it holds up a layer above. */
function spare(
  layers: readonly LayerStudy[],
  stacks: Stacks,
  safe: readonly Safe[],
  entries: CalendarEntry[],
): void {
  for (const [index, { layer }] of layers.entries()) {
    const { free, last } = safe[index]!;
    const entry = entries[last];
    if (!entry || entry.painted !== undefined || free === undefined) continue;
    let least = Number.POSITIVE_INFINITY;
    for (const area of layer.areas) {
      const beneath = stacks.depth[index]?.get(area);
      const next = beneath === undefined ? undefined : stacks.on.get(area)?.[beneath + 1];
      const from = next === undefined ? undefined : safe[next]!.from;
      if (from !== undefined) least = Math.min(least, from - free);
    }
    if (Number.isFinite(least)) entries[last] = { ...entry, daysToSpare: Math.max(0, least) };
  }
}
