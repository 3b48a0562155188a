import type { Source } from '../../materials/types.ts';
import { DARKENING, darkens } from '../../permanence/darkening.ts';
import type { Rule } from '../rule.ts';
import { pigmentName, pigmentPlace, whereUsed } from '../shared/pigments.ts';
import { label } from '../shared/words.ts';

const sources = [...new Map(DARKENING.map((d): [string, Source] => [d.source.text, d.source])).values()];

/** Earths that every palette has: what they do is common knowledge, and slight. */
const MILD = /^PBr7/;

/** Pigments known to darken, grey or turn with age; told once for each, where it is first used. */
export const darkensOrGreys: Rule = {
  id: 'darkens-or-greys',
  title: 'Colour that turns with age',
  theme: 'lasting',
  severity: 'info',
  why: 'Some pigments change by themselves or with the oil, whatever light does: smalt greys, copper greens turn brown, umbers darken. The predicted colours are those of the fresh film.',
  whatToDo: 'Allow for the change, use less oil with it, or choose a pigment that stays.',
  sources,
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan, study) {
    for (const [pigment, layers] of whereUsed(study, (p) => darkens(p) !== undefined)) {
      const first = layers[0]?.layer;
      const turns = darkens(pigment);
      if (!first || !turns) continue;
      const more = layers.length > 1 ? ` and ${layers.length - 1} other${layers.length > 2 ? 's' : ''}` : '';
      yield {
        message: `${pigmentName(pigment)} in ${label(first)}${more} ${turns.what} (${turns.source.text}). ${plan.kind === 'plan' ? 'The predicted colours are those of the fresh film.' : 'What is seen today may not be what was painted.'}`,
        place: pigmentPlace(first, (p) => p === pigment),
        severity: MILD.test(pigment.id) ? 'hint' : 'info',
        layer: first.index,
        // every palette has its umbers: nobody need do without for what they do
        ...(plan.kind === 'plan' && !MILD.test(pigment.id)
          ? {
              objection: {
                pigment,
                everywhere: true,
                otherwise: (p) => darkens(p) === undefined,
              },
            }
          : {}),
        related: layers.slice(1, 6).map((l) => ({
          message: `also in ${label(l.layer)}`,
          place: pigmentPlace(l.layer, (p) => p === pigment),
        })),
      };
    }
  },
};
