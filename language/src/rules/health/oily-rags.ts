import { binder } from '../../materials/catalogue.ts';
import { stepCaution } from '../../materials/cautions.ts';
import type { Layer, Place } from '../../plan/plan.ts';
import type { LayerStudy } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import { label, listed, quoted } from '../shared/words.ts';

const KINDS = ['drying oil', 'alkyd'];

function dryingOils({ layer, composition }: LayerStudy): string[] {
  const inFilm = composition?.binders.map((b) => b.binder) ?? [];
  const asAgent = layer.prepare.flatMap((p) =>
    p.agent?.is?.kind === 'binder' ? [p.agent.is.binder.id] : [],
  );
  return [...new Set([...inFilm, ...asAgent])].filter((id) => KINDS.includes(binder(id)?.kind ?? ''));
}

const placeIn = (layer: Layer): Place => layer.medium?.of?.place ?? layer.namePlace;

/** Rags wet with drying oil set themselves on fire; told once for a plan. */
export const oilyRags: Rule = {
  id: 'oily-rags',
  title: 'Rags that catch fire by themselves',
  theme: 'health',
  severity: 'info',
  why: 'Drying oils and alkyds give off heat as they take up oxygen. In a crumpled rag it cannot escape, and the rag burns within hours, without a flame near it.',
  whatToDo: stepCaution('rags').text,
  sources: [stepCaution('rags').source],
  restsOn: [],
  appliesTo: ['plan'],
  *check(_plan, study) {
    const wet = study.layers.find((l) => dryingOils(l).length > 0);
    if (!wet) return;
    const oils = dryingOils(wet);
    yield {
      message: `From ${label(wet.layer)} on, rags are wet with ${listed(oils.map(quoted))}: they heat up by themselves and can catch fire. Spread each flat and single outdoors until stiff, or put them into a closed metal can filled with water; empty it as the fire authority says.`,
      place: placeIn(wet.layer),
      layer: wet.layer.index,
    };
  },
};
