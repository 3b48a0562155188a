import type { Preparation } from '../../plan/plan.ts';
import type { Rule } from '../rule.ts';
import { leftBy } from '../shared/agents.ts';
import { replace } from '../shared/fixes.ts';
import { spiritFor } from '../shared/prepare.ts';
import { labelAtStart, practice, quoted } from '../shared/words.ts';

/** What does the same work and leaves nothing, by agent. */
const INSTEAD: Readonly<Record<string, string>> = {
  'surgical-spirit': 'ethanol',
  'steel-wool': 'abrasive-pad',
  saliva: 'water',
  'ox-gall': 'water',
  vinegar: 'water',
  glycerine: 'water',
};

const instead = ({ method, agent }: Preparation, spirit: string): string => {
  const id = agent?.is?.kind === 'agent' ? agent.is.agent.id : '';
  return INSTEAD[id] ?? (method === 'oil-out' ? 'walnut' : spirit);
};

/** An agent that leaves traces under the next layer. */
export const residueAgent: Rule = {
  id: 'residue-agent',
  title: 'Preparation that leaves a residue',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Some agents clean well and leave something behind that never dries or draws water: surgical spirit leaves castor oil. The next layer does not stick where it lies.',
  whatToDo:
    'Take what evaporates without a trace (plain ethanol, isopropanol, spirit), or wipe after it with that.',
  sources: [
    {
      text: 'Wikipedia, Rubbing alcohol, quoting the British Pharmacopoeia: surgical spirit holds 2.5 % castor oil',
      mark: 'second-hand',
    },
    practice('the other agents, as their entries tell'),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, _others, plan) {
    for (const p of l.layer.prepare) {
      const left = leftBy(p);
      if (left?.verdict !== 'residue' || !p.agent) continue;
      const other = instead(p, spiritFor(plan));
      yield {
        message: `${labelAtStart(l.layer)} is prepared with ${quoted(p.agent.name)}, which leaves a residue. ${left.why} Take ${quoted(other)}, which leaves nothing in the way.`,
        place: p.agent.place,
        layer: l.layer.index,
        fixes: [replace(`Use ${other}`, p.agent.place, other)],
      };
    }
  },
};
