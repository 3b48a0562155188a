import { cautionFor } from '../../materials/cautions.ts';
import type { Hazard } from '../../materials/types.ts';
import type { Rule } from '../rule.ts';
import { isFilm } from '../shared/beneath.ts';
import { on } from '../shared/films.ts';
import { pigmentName } from '../shared/pigments.ts';
import {
  hazardShare,
  oilFor,
  POISONOUS_DUST,
  prepareInstead,
  reached,
  SENSITISING_DUST,
  spiritFor,
} from '../shared/prepare.ts';
import { label, labelAtStart, listed, memory, practice, published } from '../shared/words.ts';

/** Share of the pigment from which a sensitising one is told. */
const TOLD = 0.1;

/** Sanding what must never become dust. */
export const abradeToxicLayer: Rule = {
  id: 'abrade-toxic-layer',
  title: 'Sanding a poisonous layer',
  theme: 'adhesion',
  severity: 'error',
  why: 'Lead, cadmium, chromate, arsenic and mercury colours are safe enough while they are bound; rubbed, they become dust that is breathed and swallowed. There is no light sanding of them.',
  whatToDo:
    'Oil the surface out to a breath or wipe it with spirit once it is firm. The maker’s safety data sheet and the codes of your place come first.',
  sources: [
    published('OSHA 29 CFR 1910.1025 (c), (b) and appendix B for lead'),
    memory('29 CFR 1910.1027 for cadmium, 1910.1026 for chromate; not looked up'),
    practice('no sanding of poisonous layers, and none of old paint whose pigments are unknown'),
  ],
  restsOn: [],
  appliesTo: ['plan'],
  *check(plan, study) {
    /** sensitising pigments are told of once each; poison every time */
    const told = new Set<string>();
    for (const l of study.layers) {
      const rub = l.layer.prepare.find((p) => p.method === 'abrade');
      if (!rub) continue;
      const below = reached(study, l);
      const poison = below.find((r) => hazardShare(r.below, POISONOUS_DUST) > 0);
      const worst = poison ?? below.find((r) => hazardShare(r.below, SENSITISING_DUST) >= TOLD);
      if (!worst || !isFilm(worst.below)) continue;
      const kinds: readonly Hazard[] = poison ? POISONOUS_DUST : SENSITISING_DUST;
      const pigments = worst.below.composition.pigments.map((p) => p.pigment);
      const bad = pigments.filter((p) => p.hazards.some((h) => kinds.includes(h)));
      if (!poison && bad.every((p) => told.has(p.id))) continue;
      for (const p of bad) told.add(p.id);
      const hazards = [...new Set(bad.flatMap((p) => p.hazards.filter((h) => kinds.includes(h))))];
      const oil = oilFor(l);
      const spirit = spiritFor(plan);
      const which = `${worst.below === l ? 'its own coats' : label(worst.below.layer)}${on(plan, worst.area)}`;
      yield {
        message: `${labelAtStart(l.layer)} is prepared by rubbing, which reaches ${which} with ${listed(bad.map(pigmentName))}. ${hazards.map((h) => cautionFor(h).text).join(' ')} ${poison ? 'Never rub it: oil it out or wipe it instead.' : 'Rub it wet if at all, or oil it out.'} The maker’s safety data sheet and local codes come first.`,
        place: rub.place,
        layer: l.layer.index,
        severity: poison ? 'error' : 'info',
        related:
          worst.below === l
            ? []
            : [
                {
                  message: `${labelAtStart(worst.below.layer)} holds ${listed(bad.map((p) => p.id))}`,
                  place: worst.below.layer.namePlace,
                },
              ],
        fixes: [
          prepareInstead(plan, l.layer, rub, `Oil out with ${oil} instead`, 'oil-out', oil),
          prepareInstead(
            plan,
            l.layer,
            rub,
            `Wipe with ${spirit} instead (it softens a film that is not firm)`,
            'wipe',
            spirit,
          ),
        ],
      };
    }
  },
};
