import type { Rule } from '../rule.ts';
import { leftBy } from '../shared/agents.ts';
import { mayAbrade, prepareInstead, spiritFor } from '../shared/prepare.ts';
import { labelAtStart, practice, quoted } from '../shared/words.ts';

/** A preparation that leaves a film of its own, or attacks the one it is to prepare. */
export const unsoundPreparation: Rule = {
  id: 'unsound-preparation',
  title: 'Unsound preparation of the surface',
  theme: 'adhesion',
  severity: 'warning',
  why: 'Plant juices, soap, wax, silicone and varnish leave a film of their own, and the next layer sticks to that instead of the paint. What bites paint softens the layer it should prepare.',
  whatToDo:
    'Use a light abrasion, a breath of drying oil or a wipe with spirit; they leave nothing but paint between the layers.',
  sources: [practice('nothing stays between the layers but paint; each agent’s entry tells why')],
  restsOn: [],
  appliesTo: ['plan'],
  *checkLayer(l, others) {
    for (const p of l.layer.prepare) {
      const left = leftBy(p);
      if (!left || left.verdict === 'residue' || !p.agent) continue;
      const study = others();
      const { plan } = study;
      const spirit = spiritFor(plan);
      yield {
        message: `${labelAtStart(l.layer)} is prepared with ${quoted(p.agent.name)}, which ${left.verdict === 'film' ? 'leaves a film of its own' : 'attacks the film'}. ${left.why} Take a light abrasion, a breath of oil or a wipe with spirit instead.`,
        place: p.agent.place,
        layer: l.layer.index,
        fixes: [
          ...(mayAbrade(study, l) ? [prepareInstead(plan, l.layer, p, 'Rub lightly instead', 'abrade')] : []),
          prepareInstead(plan, l.layer, p, `Wipe with ${spirit} instead`, 'wipe', spirit),
        ],
      };
    }
  },
};
