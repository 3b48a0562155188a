/** Semantic tokens: what names mean, which the highlighting by patterns cannot know. */
import type { Plan } from '../plan/plan.ts';

export const TOKEN_TYPES = ['namespace', 'class', 'variable', 'property', 'function', 'enumMember'] as const;
export const TOKEN_MODIFIERS = ['declaration'] as const;

export interface SemanticToken {
  readonly start: number;
  readonly length: number;
  readonly type: number;
  readonly declaration: boolean;
}

const TYPE: Record<string, (typeof TOKEN_TYPES)[number]> = {
  area: 'namespace',
  group: 'namespace',
  pigment: 'enumMember',
  paint: 'variable',
  mix: 'function',
  medium: 'property',
  layer: 'class',
};

const typeOf = (kind: string) => TOKEN_TYPES.indexOf(TYPE[kind] ?? 'variable');

/** In order of place, none overlapping. */
export function semanticTokens(plan: Plan): SemanticToken[] {
  const tokens = new Map<number, SemanticToken>();
  const put = (start: number, end: number, kind: string, declaration: boolean) => {
    if (end > start && !tokens.has(start))
      tokens.set(start, { start, length: end - start, type: typeOf(kind), declaration });
  };
  const declared: (readonly [
    string,
    readonly { readonly namePlace: { readonly start: number; readonly end: number } }[],
  ])[] = [
    ['area', plan.implicitArea ? [] : plan.areas],
    ['group', plan.groups],
    ['pigment', plan.pigments],
    ['paint', plan.paints],
    ['mix', plan.mixes],
    ['medium', plan.mediums],
    ['layer', plan.layers],
  ];
  for (const [kind, list] of declared)
    for (const d of list) put(d.namePlace.start, d.namePlace.end, kind, true);
  for (const n of plan.names)
    if (n.place.uri === plan.uri && n.kind && n.kind !== 'material')
      put(n.place.start, n.place.end, n.kind, false);
  return [...tokens.values()].sort((a, b) => a.start - b.start);
}
