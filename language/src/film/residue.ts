/** What a cloth leaves of a liquid that is rubbed over a painting and wiped off again. */
import { between, type Interval } from '../materials/interval.ts';
import type { Source } from '../materials/types.ts';

/** µm of the liquid, as poured, that stay after one wiping; what does not evaporate of it goes into the coat laid on it. */
export const RESIDUE: Interval & { readonly source: Source } = {
  ...between(0.3, 3, 1),
  source: {
    text: 'wiped off with a dry cloth, 0.3 to 3 µm of oil stay, about 1 µm; no measured figure was found',
    mark: 'memory',
  },
};

/** Preparations after which a liquid is wiped off with a cloth; what is washed or rubbed off leaves nothing. */
const WIPED_OFF: readonly string[] = ['oil-out', 'wipe'];
export const isWipedOff = (method: string): boolean => WIPED_OFF.includes(method);
