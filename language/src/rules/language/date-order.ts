import type { Layer } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { label, labelAtStart, languageReference, quoted } from '../shared/words.ts';

/** Dates that cannot follow one another as they do. */
export const dateOrder: Rule = {
  id: 'date-order',
  title: 'Dates out of order',
  theme: 'language',
  severity: 'error',
  why: 'A layer is dry after it is painted, and painted after what lies beneath it. Dates that say otherwise are slips, and the calendar would follow them.',
  whatToDo: 'Correct the date that is wrong.',
  sources: [languageReference],
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan) {
    const latest = new Map<
      string,
      {
        readonly number: number;
        readonly name: string;
        readonly iso: string;
        readonly place: { readonly uri: string; readonly start: number; readonly end: number };
      }
    >();
    const open = new Map<string, Layer>();
    for (const l of plan.layers) {
      const unpainted = l.painted ? l.areas.map((a) => open.get(a)).find((x) => x !== undefined) : undefined;
      if (l.painted && unpainted)
        yield {
          message: `${labelAtStart(l)} was painted on ${l.painted.iso}, but ${label(unpainted)} beneath it has no date: say when it was painted, or the calendar takes it for still to come.`,
          place: l.painted.place,
          layer: l.index,
          severity: 'info',
          related: [{ message: `${label(unpainted)} has no date`, place: unpainted.namePlace }],
        };
      // grounds and drawings are seldom dated, and nobody waits for them twice
      if (!l.painted && !['size', 'ground', 'drawing'].includes(l.kind))
        for (const a of l.areas) open.set(a, l);
      if (l.painted && l.dry && l.dry.number < l.painted.number)
        yield {
          message: `${labelAtStart(l)} cannot be dry on ${l.dry.iso}: it was painted on ${l.painted.iso}.`,
          place: l.dry.place,
          layer: l.index,
          related: [{ message: 'painted', place: l.painted.place }],
        };
      if (l.dry && !l.painted)
        yield {
          message: `${labelAtStart(l)} was seen dry on ${l.dry.iso}, but not when it was painted: add painted, else nothing can be learned from it.`,
          place: l.dry.place,
          layer: l.index,
          severity: 'info',
        };
      if (!l.painted) continue;
      // boards are bought primed: what carries the painting may be older than the plan
      const carries = l.kind === 'ground' || l.kind === 'size';
      if (plan.start && !carries && l.painted.number < plan.start.number)
        yield {
          message: `${labelAtStart(l)} was painted on ${l.painted.iso}, before the plan starts on ${plan.start.iso}.`,
          place: l.painted.place,
          layer: l.index,
          related: [{ message: 'the start', place: plan.start.place }],
        };
      const below = l.areas
        .map((a) => latest.get(a))
        .filter((x) => x !== undefined)
        .find((x) => x.number > (l.painted?.number ?? 0));
      if (below)
        yield {
          message: `${labelAtStart(l)} was painted on ${l.painted.iso}, before ${quoted(below.name)} beneath it (${below.iso}).`,
          place: l.painted.place,
          layer: l.index,
          related: [{ message: `${quoted(below.name)} was painted`, place: below.place }],
        };
      for (const a of l.areas)
        if ((latest.get(a)?.number ?? -Infinity) < l.painted.number)
          latest.set(a, {
            number: l.painted.number,
            name: l.name,
            iso: l.painted.iso,
            place: l.painted.place,
          });
    }
  },
};
