/** What a surface may be prepared with, besides oils and solvents: sound or not, and why. */
import { type RawStatement, statement } from './sources.ts';
import table from './tables/agents.json' with { type: 'json' };
import type { PreparationAgent } from './types.ts';

type Raw = Omit<PreparationAgent, 'why'> & { readonly why: RawStatement };

export const agents: readonly PreparationAgent[] = (table as unknown as readonly Raw[]).map((raw) => ({
  ...raw,
  why: statement(raw.why),
}));
