/**
 * Where sources contradicted the tables: what the table said, what was found, and why the table is now as it is. Kept
 * apart from the tables, since nothing is computed from it.
 */
import table from './decided.json' with { type: 'json' };

export interface Decision {
  /** ids of pigments */
  readonly of: readonly string[];
  /** the field of a pigment it is about */
  readonly field: string;
  readonly was: string;
  readonly found: string;
  readonly why: string;
  /** True where the table's figure stands against what was found. */
  readonly kept?: boolean;
}

export const decisions: readonly Decision[] = table;
