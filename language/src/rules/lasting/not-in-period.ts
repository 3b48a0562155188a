import { type PeriodConflict, periodConflict } from '../../permanence/period.ts';
import type { Rule } from '../rule.ts';
import { pigmentName, pigmentPlace, whereUsed } from '../shared/pigments.ts';
import { label, published } from '../shared/words.ts';

const year = (n: number): string => (n < 0 ? `${-n} BC` : String(n));

const meaning: Readonly<Record<PeriodConflict['kind'], (year: string) => string>> = {
  'too-early': (y) =>
    `nobody had it before about ${y}. The layer is later, the date is wrong, or the pigment is another`,
  'perhaps-too-early': (y) => `it is known from about ${y} on, so only the later of these years allow it`,
  'after-use': (y) => `it had gone out of use by about ${y}; old stock keeps, so this alone dates nothing`,
};

/** Pigments of a record against the years it was made in. */
export const notInPeriod: Rule = {
  id: 'not-in-period',
  title: 'Pigment outside its time',
  theme: 'lasting',
  severity: 'warning',
  why: 'A pigment that was not yet made when a picture was painted points to a later layer, a wrong date or a wrong identification. Dates of use are seldom sharp to the year.',
  whatToDo:
    'Check the identification first, then the date; give a later layer its own made, or say with allow why the two agree.',
  sources: [
    published('dates of use as the pigment’s own entry in the catalogue gives them, each with its source'),
  ],
  restsOn: [],
  appliesTo: ['record'],
  *check(plan, study) {
    for (const [pigment, layers] of whereUsed(study, () => true))
      for (const { layer } of layers) {
        // what came later has years of its own, or none that are known
        const later = layer.kind === 'retouching' || layer.kind === 'deposit' || layer.kind === 'varnish';
        const made = layer.made ?? (later ? undefined : plan.made);
        const conflict = made && made.from <= made.to ? periodConflict(pigment, made) : undefined;
        if (!made || !conflict) continue;
        const when = made.from === made.to ? year(made.from) : `${year(made.from)} to ${year(made.to)}`;
        yield {
          message: `${pigmentName(pigment)} in ${label(layer)}, made ${when}: ${meaning[conflict.kind](year(conflict.year))} (${pigment.used.words}).`,
          place: pigmentPlace(layer, (p) => p === pigment),
          severity: conflict.kind === 'too-early' ? 'warning' : 'info',
          layer: layer.index,
          related: [{ message: `made ${when}`, place: made.place }],
          objection: {
            pigment,
            everywhere: true,
            past: true,
            otherwise: (p) => !periodConflict(p, made),
          },
        };
      }
  },
};
