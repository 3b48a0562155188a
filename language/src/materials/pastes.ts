/** How much oil an unstated paste holds, by family of pigment: a table of its own, because one rule does not fit all. */
import { source } from './sources.ts';
import table from './tables/pastes.json' with { type: 'json' };
import type { PasteRule } from './types.ts';

interface Raw {
  readonly family: string;
  readonly pigments: readonly string[];
  /** multiples of the oil absorption */
  readonly times: readonly [low: number, likely: number, high: number, source: string];
}

const rules = (table as unknown as readonly Raw[]).map(
  ({ family, pigments, times: [low, likely, high, id] }): readonly [readonly string[], PasteRule] => [
    pigments,
    { family, low, likely, high, source: source(id) },
  ],
);

/** What holds for pigments of no listed family. */
export const usualPaste: PasteRule = rules.find(([pigments]) => pigments.length === 0)![1];

const byPigment = new Map(rules.flatMap(([pigments, rule]) => pigments.map((id) => [id, rule] as const)));

export const pasteRule = (pigmentId: string): PasteRule => byPigment.get(pigmentId) ?? usualPaste;
