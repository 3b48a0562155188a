/** The lists of a layer of which nothing is said yet. */
import { layerFields } from '../syntax/fields.ts';
import type { Layer } from './plan.ts';
import { emptyLists } from './properties.ts';

/** The properties of a layer that are lists, whatever it says. */
type Lists = {
  readonly [K in keyof Layer as Layer[K] extends readonly unknown[] ? K : never]: Layer[K];
};

/** New ones at every call, since a layer being read fills them. */
export const unsaid = (): Lists => ({
  ...(emptyLists(layerFields) as unknown as Lists),
  on: [],
  except: [],
  areas: [],
  fields: [],
});
