import { parseColour } from '../../optics/css.ts';
import type { OwnPigment, Swatch } from '../../plan/plan.ts';
import type { Calibration } from '../../study/swatches.ts';
import type { Rule, RuleReport } from '../rule.ts';
import { lightness } from '../shared/seen.ts';
import { figure, ours, practice, quoted } from '../shared/words.ts';

/** Measured swatches may differ by this much in L* without contradicting one another. */
const SLACK = 1;
/** L* that a painted black ground, seen with its gloss, hardly exceeds. */
const BLACK_GROUND = 20;
/** L* above which a colour may be lighter than the white it is tinted with. */
const OIL_WHITE = 90;
/** ΔE00 from the pigment it is said to be like, beyond which that is doubtful. */
const UNLIKE = 25;
/** ΔE00 within which all swatches fit the pigment it is said to be like. */
const NEAR = 8;

const said: Readonly<Record<Swatch['kind'], string>> = {
  masstone: 'the masstone',
  tint: 'the tint with white',
  'over-black': 'the film over black',
  'over-white': 'the film over white',
};

/** Pairs of swatches of one pigment, the second of which can never be darker than the first. */
const ORDER: readonly (readonly [Swatch['kind'], Swatch['kind'], string])[] = [
  ['masstone', 'tint', 'white only lightens'],
  ['over-black', 'over-white', 'a film over white shows at least as light as the same film over black'],
  ['over-black', 'masstone', 'a thicker film over black only comes nearer the masstone, from below'],
];

/** Swatches of a painter's own pigment that cannot all be true. */
export const swatchInconsistent: Rule = {
  id: 'swatch-inconsistent',
  title: 'Swatches that contradict one another',
  theme: 'glazes',
  severity: 'warning',
  why: 'Swatches recalibrate the optical data of a pigment. A tint darker than the masstone, or a film darker over white than over black, is a slip of the pen, of the light or of the instrument, and spoils every colour predicted with it.',
  whatToDo: 'Measure again, all swatches in one light, or take out the one that is wrong.',
  sources: [
    {
      text: 'Kubelka & Munk, Z. techn. Physik 12 (1931) 593: reflectance rises with scattering and with the ground',
      mark: 'second-hand',
    },
    practice('swatches over black and white are measured on one film'),
    ours('1 in L* left for measuring, 20 for a black ground, 25 ΔE00 before likeness is doubted'),
  ],
  restsOn: [],
  appliesTo: ['plan', 'record', 'palette'],
  needsColour: true,
  *check(plan, study) {
    for (const own of plan.pigments) {
      const contradicting = contradictions(own);
      if (contradicting.length > 0) yield* contradicting;
      else yield* misfit(own, study.calibration(own));
    }
  },
};

/** What can be seen from the swatches alone. */
function contradictions(own: OwnPigment): RuleReport[] {
  const seen = own.swatches.flatMap((swatch) => {
    const lab = parseColour(swatch.colour.css);
    return lab ? [{ swatch, lab }] : [];
  });
  const of = (kind: Swatch['kind']): Seen[] => seen.filter((s) => s.swatch.kind === kind);
  return ORDER.flatMap(([darker, lighter, because]) =>
    of(darker).flatMap((low) =>
      of(lighter)
        .filter((high) => high.lab[0] < low.lab[0] - SLACK && comparable(low, high))
        .map((high) => contradiction(own.name, low, high, because)),
    ),
  );
}

function comparable(low: Seen, high: Seen): boolean {
  switch (high.swatch.kind) {
    case 'tint':
      // a colour lighter than the white it is tinted with may darken; no oil white is darker than this
      return low.lab[0] <= OIL_WHITE;
    case 'over-white':
      // films of different thickness may differ either way
      return filmOf(low.swatch) === filmOf(high.swatch);
    default:
      // a painted black ground is itself not quite black
      return low.lab[0] >= BLACK_GROUND;
  }
}

/** What only shows when a pigment is fitted to all of them. */
function* misfit(own: OwnPigment, { swatches, inconsistent }: Calibration): Generator<RuleReport> {
  const farthest = swatches.toSorted((a, b) => (b.before ?? UNLIKE) - (a.before ?? UNLIKE))[0];
  // where the pigment it is like shows them all as near as this, they hardly contradict one another
  if (inconsistent && (farthest?.before ?? UNLIKE) <= NEAR) return;
  if (inconsistent && swatches.length > 1) {
    yield {
      message: `Pigment ${quoted(own.name)}: ${inconsistent.replace(/\.?$/, '.')} Until then the data of the pigment it is like are used.`,
      place: own.namePlace,
    };
    return;
  }
  const place = own.swatches.find((s) => s.kind === farthest?.kind)?.place;
  if (!farthest?.before || !place || !own.like || (!inconsistent && farthest.before <= UNLIKE)) return;
  yield {
    message: `Pigment ${quoted(own.name)}: ${said[farthest.kind]} lies ${figure(farthest.before)} ΔE00 from what ${own.like.name} would show there. Is it like another pigment?${inconsistent ? ' As it stands the swatch is left out of account.' : ''}`,
    place,
    severity: inconsistent ? 'warning' : 'info',
    related: [{ message: `like ${own.like.name}`, place: own.like.place }],
  };
}

const filmOf = (swatch: Swatch): number | undefined => swatch.film?.value.likely;

type Seen = { readonly swatch: Swatch; readonly lab: readonly [number, number, number] };

function contradiction(name: string, low: Seen, high: Seen, because: string): RuleReport {
  const [one, two] = [said[high.swatch.kind], said[low.swatch.kind]];
  return {
    message: `Pigment ${quoted(name)}: ${one} (${lightness(high.lab)}) is darker than ${two} (${lightness(low.lab)}), which cannot be: ${because}. Measure both again in one light.`,
    place: high.swatch.place,
    related: [{ message: `${two}, ${lightness(low.lab)}`, place: low.swatch.place }],
  };
}
