/** Works the examples of language/docs/figures.md out again: `node language/build/figures-page.ts`. */
import { pathToFileURL } from 'node:url';
import { reached } from './colour-page.ts';
import { fill, refill } from './page.ts';
import { air, amounts, colour, drying, example, fading, film } from './worked.ts';

export const FIGURES_PAGE = new URL('../docs/figures.md', import.meta.url);

/** The plan the page works through: the first it shows. */
export function planOf(page: string): string {
  const plan = /^```paintplan\n([\s\S]*?)^```/m.exec(page)?.[1];
  if (!plan) throw new Error('the page shows no plan');
  return plan;
}

export function filled(page: string): string {
  const e = example(planOf(page));
  return fill(page, {
    film: () => film(e),
    drying: () => drying(e),
    colour: () => colour(e),
    amounts: () => amounts(e),
    air: () => air(e),
    fading: () => fading(e),
    reached,
  });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) refill(FIGURES_PAGE, filled);
