import type { Fix, Layer, Measure, Plan, Severity } from '../plan/plan.ts';
import type { Study } from '../study/study.ts';
import { compositionOf } from '../study/what-if.ts';
import { alkydShare, fattestBelow, type Film, filmOf, isFilm } from './beneath.ts';
import { addFields, replace } from './fixes.ts';
import type { Rule } from './rule.ts';
import { Called, called, fatness, practice } from './words.ts';

/** Points of fatness by which an upper film may fall before anyone speaks, and before it is a warning. */
const INFO = 0.05;
const WARNING = 0.1;
const ERROR = 0.2;

/** A veil is too thin to pull at what lies on it. */
const VEIL_UM = 10;

function severityOf(study: Study, upper: Film, below: Film): Severity {
  const [u, b] = [upper.composition.fatness, below.composition.fatness];
  const fall = b.likely - u.likely;
  const mild = filmOf(below) < VEIL_UM || alkydShare(below.composition) > 0.5 || !fallsInBinder(upper, below);
  if (fall <= WARNING || mild) return 'info';
  return b.low - u.high > ERROR && filmOf(below) >= 15 && filmOf(upper) >= 10 ? 'error' : 'warning';
}

/** Whether the paint itself is leaner, and not only its medium less oily at the same share of binder. */
function fallsInBinder(upper: Film, below: Film): boolean {
  return upper.composition.lambda.likely > below.composition.lambda.likely + INFO;
}

const withShare = (layer: Layer, percent: number, of = layer.medium?.of): Layer => {
  const share: Measure = { value: { low: percent / 100, likely: percent / 100, high: percent / 100 }, given: 'exact', unit: 'fraction', words: `${percent} %`, place: layer.place };
  return { ...layer, medium: { share, of, place: layer.medium?.place ?? layer.place } };
};

/** Medium that makes paint into a glaze: more than this and a scumble would no longer be one. */
const MOST_IN_SCUMBLE = 60;

function leastShare(layer: Layer, needed: number, of: NonNullable<Layer['medium']>['of']): number | undefined {
  const most = layer.kind === 'scumble' ? MOST_IN_SCUMBLE : 85;
  const from = Math.round((layer.medium?.share?.value.likely ?? 0) * 100);
  for (let percent = Math.ceil((from + 1) / 5) * 5; percent <= most; percent += 5) {
    const found = compositionOf(withShare(layer, percent, of));
    if (found && found.fatness.likely >= needed) return percent;
  }
  return undefined;
}

function fixes(plan: Plan, upper: Film, below: Film): Fix[] {
  const { layer } = upper;
  const needed = below.composition.fatness.likely - INFO;
  const found: Fix[] = [];
  const own = layer.medium;
  if (own?.of?.is && own.share) {
    const percent = leastShare(layer, needed, own.of);
    if (percent !== undefined) found.push(replace(`Take ${percent} % of ${own.of.name} in ${layer.name}`, own.share.place, `${percent} %`));
  }
  for (const medium of plan.visible.mediums.values()) {
    if (medium.name === own?.of?.name) continue;
    const of: NonNullable<Layer['medium']>['of'] = { name: medium.name, place: layer.place, is: { kind: 'medium', medium } };
    if (own?.share && own.of) {
      const now = compositionOf(withShare(layer, Math.round(own.share.value.likely * 100), of));
      if (now && now.fatness.likely >= needed) found.push(replace(`Use the medium ${medium.name} in ${layer.name}`, own.of.place, medium.name));
    } else if (!own) {
      const percent = leastShare(layer, needed, of);
      if (percent !== undefined) found.push(...addFields(`Add ${percent} % of ${medium.name} to ${layer.name}`, layer, [`medium ${percent} % ${medium.name}`]));
    }
    if (found.length >= 3) break;
  }
  return found;
}

/** A film leaner than what lies beneath it on the same area. */
export const leanOverFat: Rule = {
  id: 'lean-over-fat',
  title: 'Leaner than the layer below',
  severity: 'warning',
  why: 'A fat film goes on moving for months while it dries; a leaner, stiffer one on top of it is pulled apart and cracks. Each layer is therefore at least as fat as what it lies on.',
  whatToDo: 'Take more or a fatter medium in the upper layer, a leaner one below, or let the upper layer be a mere breath of colour and say so with allow.',
  sources: [practice('fat over lean, in every studio handbook; the points of fatness at which it matters are ours'), { text: 'Asbeck & Van Loo 1949 for the critical pigment volume that fatness is measured against', mark: 'second-hand' }],
  appliesTo: ['plan'],
  *check(plan, study) {
    for (const upper of study.layers) {
      if (!isFilm(upper) || upper.layer.kind === 'varnish') continue;
      const found = fattestBelow(study, upper);
      if (!found || found.below.layer.kind === 'varnish') continue;
      const { below, area } = found;
      const [u, b] = [upper.composition.fatness.likely, below.composition.fatness.likely];
      if (b - u <= INFO) continue;
      const where = plan.implicitArea ? '' : ` on ${area}`;
      yield {
        message: `${Called(upper.layer)} dries leaner (fatness ${fatness(u)}) than ${called(below.layer)} below it${where} (${fatness(b)}): it may crack. Make the layer below leaner, this one fatter, or keep it to a breath and say so with allow.`,
        place: upper.layer.namePlace,
        layer: upper.layer.index,
        severity: severityOf(study, upper, below),
        related: [{ message: `${called(below.layer)} has fatness ${fatness(b)}`, place: below.layer.namePlace }],
        fixes: fixes(plan, upper, below),
      };
    }
  },
};
