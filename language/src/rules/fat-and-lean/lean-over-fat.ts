import type { Fix, Plan } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import type { Rule } from '../rule.ts';
import type { FilmStudy } from '../shared/beneath.ts';
import { ceiling, type Fall, fall } from '../shared/falls.ts';
import { isOilFilm, on } from '../shared/films.ts';
import { keepsLimits } from '../shared/limits.ts';
import {
  addMedium,
  changeMedium,
  leastShare,
  mostShare,
  shareOf,
  takeShare,
  useMedium,
  type Wanted,
} from '../shared/otherwise.ts';
import { fatness, label, labelAtStart, percent, practice } from '../shared/words.ts';

/** Per cent of medium up to which a fix goes: with more, body colour and scumbles become glazes. */
const MOST = { glaze: 85, other: 50 };
/** Per cent below which a glaze is none any more. */
const LEAST_IN_GLAZE = 40;

function fixes(plan: Plan, study: Study, upper: FilmStudy, below: FilmStudy): Fix[] {
  const { layer } = upper;
  const most = layer.kind === 'glaze' ? MOST.glaze : MOST.other;
  const over = ceiling(study, upper);
  const fatEnough: Wanted = (c) => !fall(study, upper, c);
  const fatter: Wanted = (c) =>
    fatEnough(c, layer) && c.fatness.likely < over && keepsLimits(study, upper, c);
  const least = layer.medium && leastShare(layer, shareOf(layer) + 1, most, fatEnough);
  const leaner: Wanted = (c) =>
    c.lambda.likely <= 1 &&
    !fall(study, upper, undefined, { index: below.layer.index, composition: c }) &&
    (fall(study, below) !== undefined || !fall(study, below, c)) &&
    keepsLimits(study, below, c);
  const fewest = below.layer.kind === 'glaze' ? LEAST_IN_GLAZE : 1;
  const less = mostShare(below.layer, shareOf(below.layer) - 1, leaner, fewest);
  return [
    ...(least !== undefined && leastShare(layer, least, least, fatter) ? takeShare(layer, least) : []),
    ...useMedium(plan, layer, fatter),
    ...changeMedium(plan, layer, (least ?? most + 1) - 1, fatter),
    ...addMedium(plan, layer, most, fatter),
    ...useMedium(plan, below.layer, leaner, 1),
    ...(less === undefined ? [] : takeShare(below.layer, less)),
  ];
}

function message(plan: Plan, upper: FilmStudy, { below, area, of, mild }: Fall): string {
  const [u, b] = [upper.composition, below.composition];
  if (of === 'medium')
    return `${labelAtStart(upper.layer)} has a leaner medium (${percent(u.mediumSolids)} of it stays) than ${label(below.layer)} below it${on(plan, area)} (${percent(b.mediumSolids)}), though its film is about as fat. From layer to layer the medium is to hold more oil, not less.`;
  const leaner = `${labelAtStart(upper.layer)} dries leaner (fatness ${fatness(u.fatness.likely)}) than ${label(below.layer)} below it${on(plan, area)} (${fatness(b.fatness.likely)})`;
  if (mild)
    return `${leaner}. That one is ${mild === 'veil' ? 'a mere veil' : 'mostly alkyd and set'}, so little harm is likely; leaner still would be better.`;
  return `${leaner}: it may crack. Make the layer below leaner, this one fatter, or keep it to a breath and say so with allow.`;
}

/** A film leaner than what lies beneath it on the same area. */
export const leanOverFat: Rule = {
  id: 'lean-over-fat',
  title: 'Leaner than the layer below',
  theme: 'fat-and-lean',
  severity: 'warning',
  why: 'A fat film goes on moving for months while it dries; a leaner, stiffer one on top of it is pulled apart and cracks. Each layer is therefore at least as fat as what it lies on.',
  whatToDo:
    'Take more or a fatter medium in the upper layer, a leaner one below, or let the upper layer be a mere breath of colour and say so with allow.',
  sources: [
    practice(
      'fat over lean, in every studio handbook, a thin imprimatura beneath excepted; the points of fatness at which it matters are ours, and the 2.5 µm of binder to spare up to which a veil beneath does not',
    ),
    {
      text: 'Asbeck & Van Loo, Ind. Eng. Chem. 41 (1949) 1470, for the critical pigment volume that fatness is measured against (record seen, paper not read)',
      mark: 'second-hand',
    },
  ],
  restsOn: ['film'],
  appliesTo: ['plan'],
  *checkLayer(upper, others) {
    if (!isOilFilm(upper) || upper.layer.kind === 'varnish') return;
    const study = others();
    const { plan } = study;
    const falling = fall(study, upper);
    if (!falling) return;
    const { below, severity } = falling;
    yield {
      message: message(plan, upper, falling),
      place: upper.layer.namePlace,
      layer: upper.layer.index,
      severity,
      related: [
        {
          message: `${labelAtStart(below.layer)} has fatness ${fatness(below.composition.fatness.likely)}`,
          place: below.layer.namePlace,
        },
      ],
      fixes: () => fixes(plan, study, upper, below),
    };
  },
};
