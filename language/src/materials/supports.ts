/** What a painting is painted on. */
import { source } from './sources.ts';
import table from './tables/supports.json' with { type: 'json' };
import type { Support } from './types.ts';

type Raw = Omit<Support, 'source'> & { readonly source: string };

export const supports: readonly Support[] = (table as unknown as readonly Raw[]).map((raw) => ({
  ...raw,
  source: source(raw.source),
}));
