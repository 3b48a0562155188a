/**
 * The sittings as an iCalendar file (RFC 5545): one all-day entry for each coat, on the day that is likely, or on the day it was
 * painted. The text depends on the plan alone: stamps come from the plan's first day, never from a clock.
 */
import ical, { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { deferringLine } from '../materials/cautions.ts';
import { legible } from '../plan/legible.ts';
import type { Study } from '../results/study.ts';
import { type DiaryEntry, diary } from '../studio/diary.ts';
import { clocksWords, dayWords } from '../studio/words.ts';

const DAY = 86_400_000;
/** iCalendar writes years with four digits. */
const LAST_DAY = Date.UTC(9999, 11, 31) / DAY;
const FIRST_DAY = Date.UTC(0, 0, 1) / DAY + 366;

const date = (day: number): Date => new Date(Math.ceil(day) * DAY);
const writable = (day: number): boolean => day >= FIRST_DAY && day <= LAST_DAY;

function description(e: DiaryEntry): string {
  const when =
    e.painted === undefined ? `When: ${clocksWords(e, true)}.` : `Painted ${dayWords(e.painted, true)}.`;
  const cautions = e.cautions.length > 0 ? [`Mind: ${e.cautions.join('; ')}.`] : [];
  return [when, ...e.steps, ...cautions, deferringLine.text].map(legible).join('\n');
}

/** A plan without dates has no days to enter: its calendar is empty. `notice` stands at its head. */
export function calendarIcs(study: Study, notice?: string): string {
  const { plan, calendar } = study;
  const title = legible(plan.title ?? 'Untitled painting');
  const result = ical({
    name: title,
    prodId: { company: 'Paintplan', product: 'paintplan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    description: notice,
  });
  if (!calendar.dated) return result.toString();
  const sittings = diary(study).flatMap((e) => {
    // a day nobody can tell is no day to enter
    const day = Math.ceil(e.painted ?? e.likely ?? Number.NaN);
    return writable(day) ? [{ e, day }] : [];
  });
  const stamp = date(plan.start?.number ?? sittings.reduce((first, s) => Math.min(first, s.day), LAST_DAY));
  const used = new Set<string>();
  for (const { e, day } of sittings) {
    let id = `${encodeURIComponent(title)}-${encodeURIComponent(e.layer)}-${e.coat}`;
    if (used.has(id)) id = `${id}-${e.index}`;
    used.add(id);
    result.createEvent({
      id: `${id}@paintplan`,
      stamp,
      start: date(day),
      end: date(day + 1),
      allDay: true,
      summary: `${e.layer}${e.coats > 1 ? ` (coat ${e.coat} of ${e.coats})` : ''}`,
      description: description(e),
      status: e.painted === undefined ? ICalEventStatus.TENTATIVE : ICalEventStatus.CONFIRMED,
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return `${result.toString()}\r\n`;
}
