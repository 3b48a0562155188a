import type { Rule } from '../rule.ts';
import { sittingOf } from '../shared/sitting.ts';
import { languageReference, ours, span } from '../shared/words.ts';

/** Solvent in a plan whose room nobody knows. */
export const airUnknown: Rule = {
  id: 'air-unknown',
  title: 'Room unknown, air not judged',
  theme: 'health',
  severity: 'hint',
  why: 'How much solvent the air holds depends on the room and how often its air is renewed. Without them only the fresh air that is needed can be told.',
  whatToDo: 'Give the studio its room and air-changes: room 40 m³, air-changes 2 per hour.',
  sources: [
    languageReference,
    ours('a box of well or badly mixed air; everything evaporates within the session'),
  ],
  restsOn: ['film', 'air', 'surface'],
  appliesTo: ['plan'],
  *check(plan, study) {
    const { air } = study;
    const layer = plan.layers.find((l) => l.name === air?.layer);
    if (!air || air.roomKnown || !layer) return;
    const fresh = air.neededFreshAir
      ? `, about ${span(air.neededFreshAir, 'm³')} an hour while you work`
      : '';
    const sitting = sittingOf(plan, air, layer);
    yield {
      message: `The plan does not say in what room it is painted, so its air cannot be judged. ${sitting.words}; that wants fresh air${fresh}. Add to the studio: room 40 m³, air-changes 2 per hour.`,
      place: plan.studio.place
        ? { ...plan.studio.place, end: plan.studio.place.start + 'studio'.length }
        : sitting.place,
      layer: sitting.layer,
    };
  },
};
