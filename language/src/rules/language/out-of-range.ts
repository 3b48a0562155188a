import type { Layer, LayerKind, Measure } from '../../plan/plan.ts';
import { boundedFacts, type Fact, figuresOf, stated } from '../../plan/stated.ts';
import { AREA_SHARE, type Bounds, FILM, RELIEF, TEMPERATURE } from '../../syntax/bounds.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { declaredFormulas, layerFormulas, type Placed } from '../shared/ingredients.ts';
import { labelAtStart, practice, quoted } from '../shared/words.ts';

/** µm from which a film written in millimetres was most likely meant in µm; who means it writes µm. */
const SLIP_UM = 1000;

/** Layers that may stand up in relief. */
const IN_RELIEF: ReadonlySet<LayerKind> = new Set(['layer', 'scumble', 'ground', 'deposit']);

/** Figures whose message says of what they are. */
const NAMED: ReadonlySet<Bounds> = new Set([FILM, AREA_SHARE]);

/** What was probably meant: another unit, or one nought less. */
function likelySlip(m: Measure, b: Bounds): string | undefined {
  if (b.slip?.from.test(m.words)) return m.words.replace(b.slip.from, b.slip.to);
  const tenth = m.value.likely / 10;
  if (!b.nought || m.given !== 'exact' || tenth < b.low || tenth > b.high) return undefined;
  const text = m.words.replace(/^(\d+)0(?![\d.,])/, '$1');
  return text === m.words ? undefined : text;
}

function judged(what: string, m: Measure | undefined, b: Bounds, layer?: number): RuleReport[] {
  if (!m || m.given === 'unknown' || m.given === 'word') return [];
  const { low, high } = m.value;
  const outside = low < b.low || high > b.high || (b.positive && high <= 0);
  const unit = m.unit === 'µm' && high >= SLIP_UM && b.slip?.from.test(m.words);
  if (!outside && !unit) return [];
  const slip = high > b.high || unit ? likelySlip(m, b) : undefined;
  // in µm the figure may stand, where it is one that occurs
  const meant = unit && !outside && m.given === 'exact' ? `${Math.round(high)} µm` : undefined;
  const message = outside
    ? `${what} of ${m.words} cannot be meant: what occurs is ${b.words}.${slip ? ` Did you mean ${slip}?` : ''}`
    : `${what} of ${m.words} looks like a slip of the unit: did you mean ${slip}? A relief as thick as that is written ${meant ?? 'in µm'}.`;
  return [
    {
      message,
      place: m.place,
      layer,
      fixes: [slip, meant].flatMap((w) => (w ? [replace(`Write ${w}`, m.place, w)] : [])),
    },
  ];
}

/** A figure no painting can have: mostly a slip of the unit. */
export const outOfRange: Rule = {
  id: 'out-of-range',
  title: 'Figure beyond belief',
  theme: 'language',
  severity: 'error',
  why: 'A film of three millimetres or a studio at 180 °C is a slip of the pen or of the unit. What is computed from it would be nonsense.',
  whatToDo: 'Correct the figure or its unit.',
  sources: [practice('bounds of what occurs in a studio')],
  restsOn: [],
  judgesFigures: true,
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const { name, word, facts, rows } of stated({ ...plan, layers: [] }, { bounded: true })) {
      const of = word === 'area' ? name : undefined;
      const reports = [...facts, ...(rows ?? []).flatMap((r) => r.facts)].flatMap((f) => judgedFact(f, of));
      // both sides of a support share one unit, and its slip
      yield* word === 'support' ? reports.slice(0, 1) : reports;
    }
    yield* amounts(declaredFormulas(plan));
  },
  *checkLayer({ layer }) {
    for (const fact of boundedFacts(layer)) yield* judgedFact(fact, layer.name, layer);
    yield* amounts(layerFormulas(layer));
  },
};

/** Most figures are: nothing more is asked of them. */
const isOrdinary = ({ value, unit }: Measure, b: Bounds): boolean =>
  value.low >= b.low &&
  value.high <= b.high &&
  !(b.positive && value.high <= 0) &&
  !(unit === 'µm' && value.high >= SLIP_UM) &&
  !(b.whole && !Number.isInteger(value.likely));

/** The figures of one field or clause, held to the bounds of its row. */
function judgedFact(fact: Fact, of: string | undefined, layer?: Layer): RuleReport[] {
  return figuresOf(fact).flatMap(({ figure: m, bounds }) => {
    if (!m || !bounds || isOrdinary(m, bounds)) return [];
    const film = bounds === FILM && layer && IN_RELIEF.has(layer.kind) ? RELIEF : bounds;
    const fahrenheit = bounds === TEMPERATURE && m.value.high > 45 && m.value.high < 110;
    const what = of !== undefined && NAMED.has(bounds) ? `${bounds.what} for ${quoted(of)}` : bounds.what;
    const reports = judged(
      what,
      m,
      fahrenheit ? { ...bounds, slip: { from: /°?C$/, to: '°F' } } : film,
      layer?.index,
    );
    if (bounds.whole && layer && m.given === 'exact' && !Number.isInteger(m.value.likely))
      reports.push({
        message: `${labelAtStart(layer)} has ${m.words} ${fact.word}: ${fact.word} are whole.`,
        place: m.place,
        layer: layer.index,
      });
    return reports;
  });
}

function* amounts(formulas: readonly Placed[]): Generator<RuleReport> {
  for (const { formula, layer } of formulas)
    for (const part of formula.parts)
      if (part.amount && !(part.amount.value > 0))
        yield {
          message: `An amount of ${part.amount.value} is none. Write how much ${quoted(part.ingredient.name)} goes in, or leave it out.`,
          place: part.amount.place,
          layer,
        };
}
