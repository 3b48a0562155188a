/** Writes the figures of language/docs/colour.md anew from the shipped data: `node language/build/colour-page.ts`. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { opticalData, pigmentsWithData } from '../src/optics/data.ts';
import type { Judged } from './optics/judged.ts';
import { contrastRatio, HIDING, hidingScattering } from './optics/measured.ts';
import { fill, refill, table } from './page.ts';

export const COLOUR_PAGE = new URL('../docs/colour.md', import.meta.url);

const two = (v: number): string => v.toFixed(2);
const percent = (share: number): string => `${Math.round(100 * share)} %`;
const pair = ([mean, median]: readonly [number, number]): string => `${two(mean)} (${two(median)})`;

const EARTHS = ['PBr7 raw-umber', 'PBr7 burnt-umber', 'PBr7 raw-sienna', 'PBr7 burnt-sienna', 'PY43', 'PBk9'];
const at = (nm: number): number => (nm - 400) / 10;

const judged = JSON.parse(readFileSync(new URL('optics/judged.json', import.meta.url), 'utf8')) as Judged;

/** The table of left-out oil films. */
export const reached = (): string =>
  table(
    ['films', 'number', 'strict', 'thickness', 'film', 'one constant', 'sRGB average'],
    judged.groups.map((g) => [
      g.name,
      g.films,
      pair(g.strict),
      pair(g.thickness),
      pair(g.own),
      two(g.singleConstant),
      two(g.srgbAverage),
    ]),
  );

export function filled(page: string): string {
  const classes = (['A', 'B', 'C', 'D'] as const).map((c) => {
    const of = pigmentsWithData().filter((id) => opticalData(id)!.confidence === c);
    const residuals = of.map((id) => opticalData(id)!.residual).sort((a, b) => a - b);
    return [c, of.length, residuals[0]!, residuals[residuals.length >> 1]!, residuals.at(-1)!];
  });
  return fill(page, {
    classes: () => table(['class', 'pigments', 'least ΔE00', 'middle', 'most'], classes),
    hiding: () =>
      `At a contrast ratio of 0.98 (here ${contrastRatio(25).toFixed(3)} at 25), scattering at 550 nm comes out at ${(
        Object.keys(HIDING) as (keyof typeof HIDING)[]
      )
        .map(
          (id) => `${two(hidingScattering(id))} per µm of pure pigment for ${id} (${HIDING[id][0]} sq ft/lb)`,
        )
        .join(
          ', ',
        )}. With it the ${judged.oilFilms} measured oil films come out about ${judged.microns.toFixed(0)} µm thick, dry, and the acrylic set is drawn to the oil by a factor of ${two(judged.common)}.`,
    earths: () =>
      table(
        ['pigment', 'a at 450 nm', 'a at 550 nm', 'a at 650 nm', 's at 550 nm'],
        EARTHS.map((id) => {
          const { a, s } = opticalData(id)!;
          return [id, two(a[at(450)]!), two(a[at(550)]!), two(a[at(650)]!), two(s[at(550)]!)];
        }),
      ),
    reached,
    coverage: () =>
      table(
        ['left-out oil films', 'number', 'within the radius', 'within twice'],
        judged.coverage.map((c) => [c.name, c.films, percent(c.within), percent(c.withinTwice)]),
      ),
    judged: () =>
      table(
        ['class', 'judged by', 'colours', 'two in three within', 'nineteen in twenty within'],
        judged.classes.map((c) => [
          c.class,
          c.by,
          c.colours,
          c.twoInThree.toFixed(1),
          c.nineteenInTwenty.toFixed(1),
        ]),
      ),
  });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) refill(COLOUR_PAGE, filled);
