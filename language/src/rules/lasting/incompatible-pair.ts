import type { Source } from '../../materials/types.ts';
import { harmingPairs, harmsOrIsHarmed } from '../../permanence/pairs.ts';
import { HARMING_PAIRS } from '../../permanence/pairs-table.ts';
import type { Rule } from '../rule.ts';
import { pigmentName, pigmentPlace } from '../shared/pigments.ts';
import { label } from '../shared/words.ts';

const sources = [...new Map(HARMING_PAIRS.map((p): [string, Source] => [p.source.text, p.source])).values()];

/** Pigments that harm one another, in one film or from film to film. */
export const incompatiblePair: Rule = {
  id: 'incompatible-pair',
  title: 'Pigments that harm each other',
  theme: 'lasting',
  severity: 'warning',
  why: 'A few pigments act on each other: sulphides blacken lead and copper colours, some whites speed the fading of lakes. Only pairs that a source tells of are named here.',
  whatToDo: 'Keep them apart, with a dry film between them where that is enough, or replace one of them.',
  sources,
  restsOn: [],
  appliesTo: ['plan', 'record'],
  *check(plan, study) {
    for (const { pair, pigments, layers, how } of harmingPairs(study)) {
      const [one, other] = pigments;
      const upper = plan.layers[Math.max(...layers)];
      const lower = plan.layers[Math.min(...layers)];
      if (!upper || !lower) continue;
      const inUpper = layers[0] === upper.index ? one : other;
      const inLower = layers[0] === lower.index ? one : other;
      const meeting =
        how === 'mixed'
          ? `${pigmentName(one)} and ${pigmentName(other)} are mixed in ${label(upper)}`
          : `${pigmentName(inUpper)} in ${label(upper)} lies right on ${pigmentName(inLower)} in ${label(lower)}`;
      const advice =
        plan.kind === 'plan'
          ? pair.disputed
            ? ' Try it on a test strip, or keep them apart.'
            : ' Keep them apart, or replace one.'
          : '';
      yield {
        message: `${meeting}: ${pair.harm} (${pair.source.text}).${advice}`,
        place: pigmentPlace(upper, (p) => p === inUpper),
        severity: pair.disputed || plan.kind === 'record' ? 'info' : 'warning',
        layer: upper.index,
        ...(plan.kind === 'plan'
          ? {
              objection: {
                pigment: inUpper,
                otherwise: (p) => !harmsOrIsHarmed(p, inLower),
              },
            }
          : {}),
        related:
          how === 'mixed'
            ? [{ message: pigmentName(other), place: pigmentPlace(upper, (p) => p === other) }]
            : [
                {
                  message: `${pigmentName(inLower)} beneath`,
                  place: pigmentPlace(lower, (p) => p === inLower),
                },
              ],
      };
    }
  },
};
