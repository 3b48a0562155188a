import { parseColour } from '../../optics/css.ts';
import { deltaE00 } from '../../optics/difference.ts';
import type { Layer, Mix, Plan } from '../../plan/plan.ts';
import type { Study } from '../../results/study.ts';
import { WITHIN } from '../../study/defaults.ts';
import { moves } from '../../study/moves.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { proportions } from '../shared/proportions.ts';
import { isClear, lightness, stackOn } from '../shared/seen.ts';
import { figure, label, labelAtStart, listed, ours, quoted } from '../shared/words.ts';

/** The last layer on an area that gives it colour. */
function lastColour(study: Study, area: string): Layer | undefined {
  const { plan } = study;
  const index = stackOn(study, area).findLast((i) => {
    const layer = plan.layers[i];
    return layer && layer.kind !== 'varnish' && !isClear(study, layer);
  });
  return index === undefined ? undefined : plan.layers[index];
}

/** How a colour differs from the wanted one, in a painter's words. */
function directions(
  wanted: readonly [number, number, number],
  got: readonly [number, number, number],
): string {
  const [l, a, b] = [got[0] - wanted[0], got[1] - wanted[1], got[2] - wanted[2]];
  const words: string[] = [];
  if (Math.abs(l) >= 2) words.push(l > 0 ? 'too light' : 'too dark');
  if (Math.abs(a) >= 2) words.push(a > 0 ? 'too red' : 'too green');
  if (Math.abs(b) >= 2) words.push(b > 0 ? 'too yellow' : 'too blue');
  return words.length > 0 ? listed(words) : 'near in every direction, yet beyond what is allowed';
}

type Lab = readonly [number, number, number];

/** Pairs of words for more and less of L*, a* and b*. */
const WAYS = [
  ['lighter', 'darker'],
  ['redder', 'greener'],
  ['yellower', 'bluer'],
] as const;

/** Where a colour goes, in one or two words, the greater first. */
function way(by: Lab): string {
  const most = [...by.keys()].sort((a, b) => Math.abs(by[b]!) - Math.abs(by[a]!));
  const told = most.filter((i, n) => n === 0 || (n === 1 && Math.abs(by[i]!) >= 2));
  return listed(told.map((i) => WAYS[i]![by[i]! > 0 ? 0 : 1]));
}

/** A layer leads away where the colour would be so much nearer with less of it, ΔE00. */
const LEADS_AWAY = 1;

/** How near a colour comes to the wanted one at best, ΔE00, if what a layer does is undone, wholly or in part. */
function undone({ wanted, got }: Miss, does: Lab): number {
  const along = does.reduce((sum, d, i) => sum + d * (got[i]! - wanted[i]!), 0);
  const whole = does.reduce((sum, d) => sum + d * d, 0);
  const part = whole > 0 ? Math.min(1, Math.max(0, along / whole)) : 0;
  return deltaE00([got[0] - part * does[0], got[1] - part * does[1], got[2] - part * does[2]], wanted);
}

/** Which layer to change: the one that leads away most; where none does, the one with the most say in the colour. */
function toBlame(study: Study, area: string, miss: Miss) {
  const { off, wanted, got } = miss;
  const all = moves(study, area).map((m) => ({ ...m, away: off - undone(miss, m.direction) }));
  const worst = all.toSorted((a, b) => b.away - a.away)[0];
  if (worst && worst.away >= LEADS_AWAY)
    return {
      layer: worst.layer,
      words: `${labelAtStart(worst.layer)} takes it ${figure(worst.away)} ΔE00 away: ${way(worst.direction)}. Lay it thinner, or change its colour.`,
    };
  const most = all.toSorted((a, b) => b.deltaE00 - a.deltaE00)[0];
  return (
    most && {
      layer: most.layer,
      words: `${labelAtStart(most.layer)} has the most say in it: make that ${way([wanted[0] - got[0], wanted[1] - got[1], wanted[2] - got[2]])}.`,
    }
  );
}

interface Miss {
  readonly off: number;
  readonly within: number;
  readonly wanted: Lab;
  readonly got: Lab;
  readonly radius: number;
}

const severityOf = ({ off, radius, within }: Miss) => (off - radius > within ? 'warning' : 'info');

const told = ({ off, within, wanted, got, radius }: Miss): string =>
  `is predicted ${figure(off)} ΔE00 from its target (within ${figure(within)} is wanted; the prediction may be off by ${figure(radius)}): ${directions(wanted, got)}. ${lightness(wanted)} is wanted, ${lightness(got)} predicted.`;

function* areas(plan: Plan, study: Study): Generator<RuleReport> {
  for (const area of study.areas) {
    const target = area.target();
    const written = plan.targets.findLast((t) => t.in?.areas.includes(area.name));
    const last = area.buildUp().at(-1)?.colour;
    if (!target?.deltaE00 || !written || !last || target.deltaE00 <= target.within) continue;
    const miss = {
      off: target.deltaE00,
      within: target.within,
      wanted: target.lab,
      got: last.lab,
      radius: last.radius,
    };
    const layer = lastColour(study, area.name);
    const blamed = toBlame(study, area.name, miss);
    yield {
      message: `${quoted(area.name)} ${told(miss)} ${blamed?.words ?? 'Change its last colour or what that lies on.'}`,
      place: written.place,
      severity: severityOf(miss),
      layer: layer?.index,
      related: blamed
        ? [{ message: `the layer to change, ${quoted(blamed.layer.name)}`, place: blamed.layer.namePlace }]
        : [],
      fixes: () => (layer ? proportions(study, layer, area.name, target.lab, target.within) : []),
    };
  }
}

/** The layer that is laid in a mix and nothing else. */
const layerOf = (plan: Plan, mix: Mix): Layer | undefined =>
  plan.layers.find(({ colour }) => {
    const [only, ...more] = colour?.kind === 'formula' ? colour.formula.parts : [];
    return only?.ingredient.is.kind === 'mix' && only.ingredient.is.mix === mix && more.length === 0;
  });

function* mixes(plan: Plan, study: Study): Generator<RuleReport> {
  for (const mix of plan.mixes) {
    const wanted = mix.target && parseColour(mix.target.css);
    const layer = wanted && layerOf(plan, mix);
    if (!mix.target || !layer) continue;
    const within = mix.within?.value.likely ?? WITHIN;
    // over several areas a mix may come out several ways; the nearest counts
    const [nearest] = (study.layers[layer.index]?.colours() ?? [])
      .map((c) => ({
        area: c.area,
        off: deltaE00(wanted, c.lab),
        within,
        wanted,
        got: c.lab,
        radius: c.radius,
      }))
      .sort((a, b) => a.off - b.off);
    if (!nearest || !(nearest.off > within)) continue;
    const where = plan.implicitArea ? '' : ` on ${quoted(nearest.area)}`;
    yield {
      message: `Mix ${quoted(mix.name)}, laid as ${label(layer)}${where}, ${told(nearest)} Change its proportions, or the film and what lies beneath.`,
      place: mix.target.place,
      severity: severityOf(nearest),
      layer: layer.index,
      related: [{ message: `laid here as ${quoted(layer.name)}`, place: layer.namePlace }],
    };
  }
}

/** What the last colour of an area, or a mix where it is laid, is predicted to be, against what is wanted there. */
export const targetMissed: Rule = {
  id: 'target-missed',
  title: 'Target colour missed',
  theme: 'glazes',
  severity: 'warning',
  why: 'The colour predicted at the end of an area, or of a mix where it is laid, is further from its target than the plan allows. The prediction has a radius of its own, so a near miss may still be a hit.',
  whatToDo:
    'Change the layer that is named: each is taken out in thought, and the one named is that with less of which the colour would be nearest. paintplan match proposes proportions.',
  sources: [
    { text: 'ISO/CIE 11664-6 (CIEDE2000) for the difference', mark: 'published' },
    ours('within 5 ΔE00 where the plan does not say'),
  ],
  restsOn: ['film', 'films beneath', 'tolerance'],
  appliesTo: ['plan'],
  needsColour: true,
  *check(plan, study) {
    yield* areas(plan, study);
    yield* mixes(plan, study);
  },
};
