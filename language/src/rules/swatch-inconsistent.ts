import { parseColour } from '../optics/css.ts';
import type { Swatch } from '../plan/plan.ts';
import type { Report, Rule } from './rule.ts';
import { lightness } from './seen.ts';
import { ours, practice, quoted } from './words.ts';

/** Measured swatches may differ by this much in L* without contradicting one another. */
const SLACK = 1;
/** L* that a painted black ground, seen with its gloss, hardly exceeds. */
const BLACK_GROUND = 20;

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
  severity: 'warning',
  why: 'Swatches recalibrate the optical data of a pigment. A tint darker than the masstone, or a film darker over white than over black, is a slip of the pen, of the light or of the instrument, and spoils every colour predicted with it.',
  whatToDo: 'Measure again, all swatches in one light, or take out the one that is wrong.',
  sources: [
    {
      text: 'Kubelka & Munk, Z. techn. Physik 12 (1931) 593: reflectance rises with scattering and with the ground',
      mark: 'second-hand',
    },
    practice('swatches over black and white are measured on one film'),
    ours('1 in L* left for measuring, 20 for a black ground'),
  ],
  appliesTo: ['plan', 'record', 'palette'],
  *check(plan) {
    for (const own of plan.pigments) {
      const seen = own.swatches.flatMap((swatch) => {
        const lab = parseColour(swatch.colour.css);
        return lab ? [{ swatch, lab }] : [];
      });
      for (const [darker, lighter, because] of ORDER)
        for (const low of seen.filter((s) => s.swatch.kind === darker))
          for (const high of seen.filter((s) => s.swatch.kind === lighter)) {
            if (high.lab[0] >= low.lab[0] - SLACK) continue;
            // a colour lighter than the white it is tinted with may darken; no oil white is darker than this
            if (lighter === 'tint' && low.lab[0] > 90) continue;
            // films of different thickness may differ either way, and a black ground is itself not quite black
            if (lighter === 'over-white' && filmOf(low.swatch) !== filmOf(high.swatch)) continue;
            if (lighter === 'masstone' && low.lab[0] < BLACK_GROUND) continue;
            yield contradiction(own.name, low, high, because);
          }
    }
  },
};

const filmOf = (swatch: Swatch): number | undefined => swatch.film?.value.likely;

type Seen = { readonly swatch: Swatch; readonly lab: readonly [number, number, number] };

function contradiction(name: string, low: Seen, high: Seen, because: string): Report {
  const [one, two] = [said[high.swatch.kind], said[low.swatch.kind]];
  return {
    message: `Pigment ${quoted(name)}: ${one} (${lightness(high.lab)}) is darker than ${two} (${lightness(low.lab)}), which cannot be: ${because}. Measure both again in one light.`,
    place: high.swatch.place,
    related: [{ message: `${two}, ${lightness(low.lab)}`, place: low.swatch.place }],
  };
}
