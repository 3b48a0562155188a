/** Which sittings of a plan a card is asked for, and what is said where there is none such. */
import type { Study } from '../results/study.ts';
import { type Sitting, sittings } from '../studio/sittings.ts';
import { dayWords } from '../studio/words.ts';

/** A sitting by its number, or by its day: an ISO date, or the number of the day in a plan without dates. */
export interface Asked {
  readonly sitting?: number;
  readonly date?: string;
}

const KINDS = {
  record: 'is a record: sitting cards are for a plan, which is still to be painted',
  palette: 'is a palette: sitting cards are for a plan, which has layers',
} as const;

const counted = (n: number): string => (n === 1 ? 'one sitting' : `${n} sittings`);

/** Days since 1970-01-01 of an ISO date; undefined for one that no calendar has. */
function dayOfIso(iso: string): number | undefined {
  const time = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(time.getTime()) && time.toISOString().startsWith(iso)
    ? time.getTime() / 86_400_000
    : undefined;
}

/** The sittings asked for; or why there are none, as a sentence about the plan without its name. */
export function chosenSittings(
  { plan, calendar }: Study,
  { sitting, date }: Asked,
): readonly Sitting[] | string {
  if (plan.kind !== 'plan') return `${KINDS[plan.kind]}.`;
  const all = sittings(calendar);
  if (all.length === 0) return 'has no layers to lay: there is no sitting.';
  if (sitting !== undefined) {
    const found = all[sitting - 1];
    return found ? [found] : `has no sitting ${sitting}: it has ${counted(all.length)}.`;
  }
  if (date === undefined) return all;
  const { dated } = calendar;
  const numbered = /^\d{1,7}$/.test(date);
  if (dated && numbered)
    return `has dates: give the day as one, for instance --date ${dayWords(all[0]?.day ?? 0, true)}.`;
  if (!dated && !numbered)
    return 'has no dates: give the number of the day, for instance --date 14, or write ‘start’ with the first day of work.';
  const day = numbered ? Number(date) : dayOfIso(date);
  if (day === undefined) return `cannot have a sitting on ${date}: there is no such day.`;
  const found = all.find((s) => s.day === day);
  if (found) return [found];
  const said = (s: Sitting) => `sitting ${s.number} is on ${dayWords(s.day ?? Number.NaN, dated)}`;
  const known = all.filter((s) => s.day !== undefined);
  const near = [known.findLast((s) => s.day! < day), known.find((s) => s.day! > day)].filter(
    (s) => s !== undefined,
  );
  const unknown = all.length - known.length;
  const rest = unknown > 0 ? `; the day of ${counted(unknown)} is not known` : '';
  return `has no sitting on ${dayWords(day, dated)}: ${near.map(said).join(', ') || 'no day is known'}${rest}.`;
}
