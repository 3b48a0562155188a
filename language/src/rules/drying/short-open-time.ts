import { exactly } from '../../materials/interval.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import { timeWords } from '../../studio/words.ts';
import { SESSION_HOURS, TEMPERATURE } from '../../study/defaults.ts';
import { dryingOf } from '../../study/what-if.ts';
import type { Rule } from '../rule.ts';
import type { FilmStudy } from '../shared/beneath.ts';
import { ceiling, fall } from '../shared/falls.ts';
import { isOilFilm } from '../shared/films.ts';
import { keepsLimits } from '../shared/limits.ts';
import { useMedium } from '../shared/otherwise.ts';
import { figure, labelAtStart, ours, practice, published } from '../shared/words.ts';

const HOURS = 24;

const sessionHours = ({ studio }: Pick<Plan, 'studio'>): number =>
  studio.session?.value.likely ?? SESSION_HOURS;

function fixes(plan: Plan, study: Study, film: FilmStudy) {
  const temperature = plan.studio.temperature?.value ?? TEMPERATURE;
  const over = ceiling(study, film);
  const falls = fall(study, film) !== undefined;
  return useMedium(plan, film.layer, (c, changed) => {
    const open = dryingOf(changed, temperature)?.open ?? exactly(0);
    return (
      open.low * HOURS >= sessionHours(plan) &&
      c.fatness.likely < over &&
      (falls || !fall(study, film, c)) &&
      keepsLimits(study, film, c)
    );
  });
}

/** Colour that is to be wiped out sets before the sitting is over. */
export const shortOpenTime: Rule = {
  id: 'short-open-time',
  title: 'Sets before it can be wiped out',
  theme: 'drying',
  severity: 'warning',
  why: 'Colour is lifted out or blended only while the film is open. An alkyd or a resin sets when its spirit has left it, long before it is dry, and the thinner the film, the sooner. Strong driers shorten the time, too.',
  whatToDo:
    'Take a medium with more of a slow oil, do the wiping at once area by area, or plan a shorter sitting.',
  sources: [
    published(
      "Kay, The Painter's Guide to Studio Methods and Materials (1983) p.199: alkyd paint tacky in 4 hours, dry to touch in 8",
    ),
    practice('safflower, poppy or walnut oil keep a glaze open'),
    practice('5 µm with half alkyd in the solids is too sticky to wipe out within a sitting'),
    ours(
      'open for 0.3 to 0.6 of the time to touch-dry; alkyd and resin set before that, in proportion to the film, as the drying model has it',
    ),
  ],
  restsOn: ['film', 'climate', 'air'],
  appliesTo: ['plan'],
  *checkLayer(l, others, file) {
    const session = sessionHours(file);
    if (!(session > 0) || l.layer.wipeOut.length === 0 || !isOilFilm(l) || !l.drying) return;
    const { open } = l.drying;
    if (open.low * HOURS >= session - 1e-6) return;
    const study = others();
    yield {
      message: `${labelAtStart(l.layer)} is to be wiped out, and may set after ${timeWords(exactly(open.low), figure)}: it stays open for ${timeWords(open, figure)}, and the sitting lasts ${figure(session)} hours. Take a medium with a slower oil, or wipe at once.`,
      place: l.layer.fields.find((f) => f.name === 'wipe-out')?.place ?? l.layer.namePlace,
      layer: l.layer.index,
      fixes: fixes(study.plan, study, l),
    };
  },
};
