/** Looking things up in the tables, by the names the language uses and by those a painter might write instead. */
import { agents } from './agents.ts';
import { binders } from './binders.ts';
import { grounds } from './grounds.ts';
import { nearest } from './nearest.ts';
import { pigments } from './pigments.ts';
import { solvents } from './solvents.ts';
import { supports } from './supports.ts';
import type { Binder, GroundMaterial, Pigment, PreparationAgent, Solvent, Support } from './types.ts';

export { nearest } from './nearest.ts';

/** Version of the shipped figures; reports name it. */
export const dataVersion = '2026.11';

export type PigmentLookup =
  | { readonly kind: 'found'; readonly pigment: Pigment }
  | { readonly kind: 'needs-variety'; readonly choices: readonly Pigment[] }
  | { readonly kind: 'unknown-variety'; readonly choices: readonly Pigment[] }
  | { readonly kind: 'unknown'; readonly near: readonly string[] };

const word = (name: string): string => name.toLowerCase().replace(/[\s_]+/g, '-');

const once = <T>(make: () => T): (() => T) => {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
};

const byCode = once(() => {
  const map = new Map<string, Pigment[]>();
  for (const p of pigments) {
    const key = (p.code ?? p.id).toLowerCase();
    map.set(key, [...(map.get(key) ?? []), p]);
  }
  return map;
});

const byCommonName = once(() => new Map(pigments.flatMap((p) => p.names.map((n) => [word(n), p.id] as const))));

function nearPigments(name: string): string[] {
  const common = byCommonName();
  const exact = common.get(word(name));
  const ids = pigments.map((p) => p.id);
  const codes = nearest(name, [...new Set(pigments.map((p) => p.code ?? p.id))], 3);
  const words = nearest(word(name), [...common.keys()], 2).map((n) => common.get(n) as string);
  return [...new Set([...(exact ? [exact] : []), ...(/\d/.test(name) ? codes : []), ...words, ...codes])].filter((id) => ids.includes(id) || byCode().has(id.toLowerCase())).slice(0, 3);
}

/** Codes are read in any case. A bare code means its usual pigment, where there is one. */
export function lookupPigment(code: string, variety?: string): PigmentLookup {
  const choices = byCode().get(code.toLowerCase());
  if (!choices) return { kind: 'unknown', near: nearPigments(code) };
  const pigment = variety === undefined ? (choices.find((p) => p.byDefault) ?? (choices.length === 1 ? choices[0] : undefined)) : choices.find((p) => p.variety === variety.toLowerCase());
  if (pigment) return { kind: 'found', pigment };
  return { kind: variety === undefined ? 'needs-variety' : 'unknown-variety', choices };
}

export const allPigments = (): readonly Pigment[] => pigments;

interface Named {
  readonly id: string;
  readonly names: readonly string[];
}

function index<T extends Named>(table: readonly T[]): (id: string) => T | undefined {
  const map = once(() => {
    const found = new Map<string, T>();
    for (const entry of table) for (const name of [entry.id, ...entry.names.map(word)]) if (!found.has(name)) found.set(name, entry);
    return found;
  });
  return (id) => map().get(word(id));
}

export const binder: (id: string) => Binder | undefined = index(binders);
export const solvent: (id: string) => Solvent | undefined = index(solvents);
export const support: (id: string) => Support | undefined = index(supports);
export const ground: (id: string) => GroundMaterial | undefined = index(grounds);
export const agent: (id: string) => PreparationAgent | undefined = index(agents);

export type Role = 'medium' | 'binder' | 'resin' | 'support' | 'ground' | 'agent';

const ids = (table: readonly Named[]): string[] => table.map((entry) => entry.id);
const oils = () => binders.filter((b) => ['drying oil', 'semi-drying oil', 'alkyd', 'balsam', 'resin', 'wax'].includes(b.kind));

/** Names that may stand in a role, for completion and for suggestions. */
export function materialNames(role: Role): readonly string[] {
  switch (role) {
    case 'medium':
      return [...ids(oils()), ...ids(solvents)];
    case 'binder':
      return ids(binders);
    case 'resin':
      return ids(binders.filter((b) => b.kind === 'resin' || b.kind === 'wax' || b.kind === 'acrylic'));
    case 'support':
      return ids(supports);
    case 'ground':
      return ids(grounds);
    case 'agent':
      return [...ids(oils()), ...ids(solvents), ...ids(agents)];
  }
}

export { dryingFactor } from './drying-classes.ts';
export { grounds } from './grounds.ts';
