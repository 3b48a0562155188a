import type { Fix, Plan } from '../../plan/plan.ts';
import type { LayerStudy, Study } from '../../results/study.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { touching } from '../shared/beneath.ts';
import { isOilFilm, on } from '../shared/films.ts';
import { daysPainted } from '../shared/laid.ts';
import { BEADS } from '../shared/limits.ts';
import { addPreparation, mayAbrade, oilFor, spiritFor } from '../shared/prepare.ts';
import { fatness, label, labelAtStart, ours, practice } from '../shared/words.ts';

function fixes(plan: Plan, study: Study, layer: LayerStudy): Fix[] {
  const spirit = spiritFor(plan);
  const oil = oilFor(layer);
  return [
    ...(mayAbrade(study, layer)
      ? addPreparation('Rub the surface lightly first', layer.layer, 'prepare abrade')
      : []),
    ...addPreparation(`Oil out thinly with ${oil} first`, layer.layer, `prepare oil-out with ${oil}`),
    ...addPreparation(
      `Wipe with ${spirit} first (it softens a film that is not firm)`,
      layer.layer,
      `prepare wipe with ${spirit}`,
    ),
  ];
}

const TODO =
  'Rub it lightly, oil it out to a breath, or wipe it with spirit once it is firm (spirit softens a young film).';

/** A fat layer on a closed fat film, with nothing done to the surface. */
export const beadingRisk: Rule = {
  id: 'beading-risk',
  title: 'May bead on a closed fat film',
  theme: 'adhesion',
  severity: 'warning',
  why: 'A dry film rich in oil is closed and smooth; a fat layer laid on it draws back into beads and does not grip. A little tooth, a breath of oil or a wipe lets it wet the surface.',
  whatToDo:
    'Rub the surface lightly (never a poisonous one), oil it out to a breath, or wipe it with spirit once it is firm.',
  sources: [
    practice('glazes bead on a glossy film; abrasion, oiling out or a wipe with spirit help'),
    ours('a dry film of fatness 50 % or more under a layer of 40 % or more'),
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(upper, others) {
    const { layer } = upper;
    if (!isOilFilm(upper) || layer.kind === 'varnish' || layer.prepare.length > 0) return;
    const u = upper.composition.fatness;
    if (u.likely < BEADS.upper) return;
    const study = others();
    const { plan } = study;
    const report = (message: string, sure: boolean, below?: LayerStudy): RuleReport => ({
      message: `${message} ${TODO}`,
      place: layer.namePlace,
      layer: layer.index,
      severity: sure ? 'warning' : 'info',
      related: below
        ? [{ message: `${labelAtStart(below.layer)} dries to a closed film`, place: below.layer.namePlace }]
        : [],
      fixes: fixes(plan, study, upper),
    });
    let gravest: RuleReport | undefined;
    for (const { below, area } of touching(study, upper)) {
      if (!isOilFilm(below) || below.layer.kind === 'varnish') continue;
      const b = below.composition.fatness;
      const days = daysPainted(below.layer, layer);
      const wet = days !== undefined && below.drying !== undefined && days < below.drying.touchDry.low;
      if (b.likely < BEADS.below || wet) continue;
      const sure = b.low >= BEADS.below && u.low >= BEADS.upper;
      if (gravest && (gravest.severity === 'warning' || !sure)) continue;
      gravest = report(
        `${labelAtStart(layer)} (fatness ${fatness(u.likely)}) may bead on the closed film of ${label(below.layer)}${on(plan, area)} (${fatness(b.likely)}): nothing is done to the surface.`,
        sure,
        below,
      );
    }
    // its own coats lie on each other as layers do
    if (!gravest && upper.coats > 1 && u.likely >= BEADS.below)
      gravest = report(
        `Each coat of ${label(layer)} (fatness ${fatness(u.likely)}) may bead on the one before: nothing is done to the surface between them.`,
        u.low >= BEADS.below,
      );
    if (gravest) yield gravest;
  },
};
