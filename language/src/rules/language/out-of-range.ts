import type { Measure } from '../../plan/plan.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { replace } from '../shared/fixes.ts';
import { labelAtStart, practice, quoted } from '../shared/words.ts';

interface Bounds {
  readonly low: number;
  readonly high: number;
  /** in the words of the field's own unit */
  readonly words: string;
  /** a likely slip of the unit: what to write instead, by what factor */
  readonly slip?: { readonly from: RegExp; readonly to: string };
  /** one nought too many is a likely slip here */
  readonly nought?: boolean;
  /** zero is a figure that makes no sense here */
  readonly positive?: boolean;
}

/** µm from which a film written in millimetres was most likely meant in µm; who means it writes µm. */
const SLIP_UM = 1000;

const FILM: Bounds = {
  low: 0.1,
  high: 2000,
  words: '0.1 to 2000 µm',
  slip: { from: /mm$|cm$/, to: 'µm' },
  positive: true,
};
const IMPASTO: Bounds = { ...FILM, high: 20_000, words: '0.1 µm to 20 mm' };
const SHARE: Bounds = { low: 0, high: 1, words: '0 to 100 %', nought: true };
const AREA: Bounds = { ...SHARE, words: 'more than 0 and up to 100 %', positive: true };
const DAYS: Bounds = { low: 0, high: 36_525, words: 'no time at all to 100 years' };

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
    const s = plan.studio;
    const fahrenheit =
      s.temperature && s.temperature.value.high > 45 && s.temperature.value.high < 110
        ? { from: /°?C$/, to: '°F' }
        : undefined;
    yield* judged('A temperature', s.temperature, {
      low: -10,
      high: 45,
      words: '−10 to 45 °C',
      slip: fahrenheit,
      nought: true,
    });
    yield* judged('A humidity', s.humidity, SHARE);
    yield* judged('A room', s.room, { low: 1, high: 100_000, words: '1 to 100,000 m³' });
    yield* judged('Air changes', s.airChanges, { low: 0, high: 100, words: '0 to 100 an hour' });
    yield* judged('A session', s.session, { low: 0.05, high: 24, words: '3 minutes to 24 hours' });
    yield* judged('Light', s.light?.lux, { low: 0, high: 150_000, words: '0 to 150,000 lux' });
    yield* judged('Light', s.light?.hoursPerYear, {
      low: 0,
      high: 8784,
      words: '0 to 8784 hours, as many as a year has',
    });
    // both sides share one unit, and its slip
    const [height = [], width = []] = [plan.support?.height, plan.support?.width].map((side) =>
      judged('A side', side, { low: 0.5, high: 3000, words: '0.5 cm to 30 m', positive: true }),
    );
    yield* height.length > 0 ? height : width;
    if (!plan.implicitArea)
      for (const a of plan.areas) yield* judged(`A share for ${quoted(a.name)}`, a.share, AREA);
    for (const p of plan.paints)
      yield* judged('An oil content', p.oil, { low: 0, high: 0.95, words: '0 to 95 % by mass' });
    for (const p of plan.pigments) {
      yield* judged('A density', p.density, { low: 0.8, high: 12, words: '0.8 to 12 g/cm³' });
      yield* judged('An oil absorption', p.oilAbsorption, {
        low: 2,
        high: 400,
        words: '2 to 400 g per 100 g',
      });
      for (const w of p.swatches) yield* judged('A film', w.film, FILM);
    }
    for (const f of [...plan.mixes.map((m) => m.within), ...plan.targets.map((t) => t.within)])
      yield* judged('A tolerance', f, { low: 0.1, high: 100, words: 'a ΔE00 of 0.1 to 100' });
    for (const l of plan.layers) {
      yield* judged(
        `A film for ${quoted(l.name)}`,
        l.film,
        l.kind === 'layer' || l.kind === 'scumble' || l.kind === 'ground' || l.kind === 'deposit'
          ? IMPASTO
          : FILM,
        l.index,
      );
      yield* judged('A share of medium', l.medium?.share, SHARE, l.index);
      yield* judged('A wait', l.wait, DAYS, l.index);
      yield* judged('A time', l.after, DAYS, l.index);
      yield* judged('A number of coats', l.coats, { low: 1, high: 200, words: '1 to 200' }, l.index);
      if (l.coats && !Number.isInteger(l.coats.value.likely) && l.coats.given === 'exact')
        yield {
          message: `${labelAtStart(l)} has ${l.coats.words} coats: coats are whole.`,
          place: l.coats.place,
          layer: l.index,
        };
    }
    for (const sample of plan.samples)
      for (const row of sample.layers) yield* judged('A film', row.film, { ...IMPASTO, low: 0.05 });
    yield* amounts(plan);
  },
};

function* amounts(plan: Parameters<Rule['check']>[0]): Generator<RuleReport> {
  const all = [
    ...plan.paints.map((p) => ({ formula: p.formula, layer: undefined })),
    ...plan.mediums.map((p) => ({ formula: p.formula, layer: undefined })),
    ...plan.mixes.map((p) => ({ formula: p.formula, layer: undefined })),
    ...plan.layers.map((l) => ({
      formula: l.colour?.kind === 'formula' ? l.colour.formula : undefined,
      layer: l.index,
    })),
  ];
  for (const { formula, layer } of all)
    for (const part of formula?.parts ?? [])
      if (part.amount && !(part.amount.value > 0))
        yield {
          message: `An amount of ${part.amount.value} is none. Write how much ${quoted(part.ingredient.name)} goes in, or leave it out.`,
          place: part.amount.place,
          layer,
        };
}
