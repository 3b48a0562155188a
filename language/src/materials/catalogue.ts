/** Looking things up in the tables, by the names the language uses and by those a painter might write instead. */
import { agents } from './agents.ts';
import { binders } from './binders.ts';
import { grounds } from './grounds.ts';
import { nearest } from './nearest.ts';
import { pigments } from './pigments.ts';
import { solvents } from './solvents.ts';
import { supports } from './supports.ts';
import type {
  Binder,
  Catalogue,
  GroundMaterial,
  Pigment,
  PreparationAgent,
  Solvent,
  Support,
} from './types.ts';
import { dataVersion } from './version.ts';

export { nearest } from './nearest.ts';
export { type DataRecord, dataRecord, dataVersion } from './version.ts';

/**
 * What a code and its second word turned out to be: one pigment, a choice of several, or unknown with the nearest
 * names.
 */
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

/** Pigments a painter may mean by a name, and by each telling word of a name. */
const byName = once(() => {
  const whole = new Map<string, string[]>();
  const part = new Map<string, string[]>();
  const add = (map: Map<string, string[]>, key: string, id: string) => {
    const known = map.get(key);
    if (!known) map.set(key, [id]);
    else if (!known.includes(id)) known.push(id);
  };
  for (const p of pigments)
    for (const name of p.names.map(plainWord)) {
      add(whole, name, p.id);
      for (const piece of name.split('-')) if (!HUES.has(piece)) add(part, piece, p.id);
    }
  return { whole, part };
});

// a hue alone tells no pigment from another
const HUES = new Set(
  'white yellow orange red violet purple blue green brown black light deep dark pale shade medium oxide lake earth of the and not told form in hue real genuine'.split(
    ' ',
  ),
);

const plainWord = (name: string): string => word(name).replace(/[^a-z0-9-]+/g, '');

/** Shared words over all words of both names: 1 where they are the same. */
function likeness(name: string, id: string): number {
  const mine = new Set(plainWord(name).split('-'));
  const scores = (byId().get(id)?.names ?? []).map((n) => {
    const theirs = new Set(plainWord(n).split('-'));
    return [...mine].filter((w) => theirs.has(w)).length / new Set([...mine, ...theirs]).size;
  });
  return Math.max(0, ...scores);
}

const byId = once(() => new Map(pigments.map((p) => [p.id, p])));

/** What a painter most often has in mind with a hue alone. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  white: ['PW6', 'PW1', 'PW4'],
  black: ['PBk9', 'PBk7', 'PBk11'],
  yellow: ['PY43', 'PY37', 'PY150'],
  orange: ['PO20', 'PO73'],
  red: ['PR101', 'PR108', 'PR254'],
  brown: ['PBr7 burnt-umber', 'PBr7 burnt-sienna', 'PBr6'],
  blue: ['PB29', 'PB28', 'PB15:3'],
  green: ['PG18', 'PG17', 'PG7'],
  violet: ['PV19', 'PV23', 'PV15'],
  purple: ['PV19', 'PV23', 'PV15'],
};

function nearPigments(name: string): string[] {
  if (name.length > 60) return [];
  const { whole, part } = byName();
  const asked = plainWord(name);
  if (Object.hasOwn(USUAL, asked)) return [...(USUAL[asked] ?? [])];
  const asCode = byCode().get(asked.replaceAll('-', ''));
  const related = [...new Set(asked.split('-').flatMap((piece) => part.get(piece) ?? []))].sort(
    (a, b) => likeness(name, b) - likeness(name, a),
  );
  const codes = nearest(name, [...new Set(pigments.map((p) => p.code ?? p.id))], 3);
  const spelt = nearest(asked, [...whole.keys()], 2).flatMap((n) => whole.get(n) ?? []);
  const pieces =
    related.length > 0 || spelt.length > 0
      ? []
      : asked
          .split('-')
          .flatMap((piece) => (piece.length < 5 ? [] : nearest(piece, [...part.keys()], 1)))
          .flatMap((piece) => part.get(piece) ?? []);
  return [
    ...new Set([
      ...(asCode ? [asCode[0]?.code ?? name] : []),
      ...(whole.get(asked) ?? []),
      ...(/\d/.test(name) ? codes : []),
      // a word that stands in names of the catalogue is meant as it is, not as a slip for another
      ...(part.has(asked) ? [...related, ...spelt] : [...spelt, ...related]),
      ...pieces,
      ...codes,
    ]),
  ].slice(0, 3);
}

/** Codes are read in any case. A bare code means its usual pigment, where there is one. */
export function lookupPigment(code: string, variety?: string): PigmentLookup {
  const choices = byCode().get(code.toLowerCase());
  if (!choices) return unknownPigment(code);
  const pigment =
    variety === undefined
      ? (choices.find((p) => p.byDefault) ?? (choices.length === 1 ? choices[0] : undefined))
      : choices.find((p) => p.variety === variety.toLowerCase());
  if (pigment) return { kind: 'found', pigment };
  return { kind: variety === undefined ? 'needs-variety' : 'unknown-variety', choices };
}

/** Pigments near a name that is none, as last asked: a plan whose palette is missing asks for the same few in every layer. */
const nears = new Map<string, readonly string[]>();
const MOST_NEARS = 1000;

const unknownPigment = (code: string): PigmentLookup => ({
  kind: 'unknown',
  // most who ask want to know only that it is none
  get near() {
    const known = nears.get(code);
    if (known) return known;
    if (nears.size >= MOST_NEARS) nears.clear();
    const near = nearPigments(code);
    nears.set(code, near);
    return near;
  },
});

/** Every table, with the number of its figures. */
export const catalogue: Catalogue = {
  version: dataVersion,
  pigments,
  binders,
  solvents,
  supports,
  grounds,
  agents,
};

export const allPigments = (): readonly Pigment[] => pigments;

interface Named {
  readonly id: string;
  readonly names: readonly string[];
}

function index<T extends Named>(table: readonly T[]): (id: string) => T | undefined {
  const map = once(() => {
    const byName = new Map<string, T>();
    for (const entry of table)
      for (const name of [entry.id, ...entry.names.map(word)]) if (!byName.has(name)) byName.set(name, entry);
    return byName;
  });
  return (id) => map().get(word(id));
}

/** A binder by its name or another of its names; undefined where there is none. */
export const binder: (id: string) => Binder | undefined = index(binders);
/** A solvent by its name or another of its names; undefined where there is none. */
export const solvent: (id: string) => Solvent | undefined = index(solvents);
/** A support by its name or another of its names; undefined where there is none. */
export const support: (id: string) => Support | undefined = index(supports);
/** A ground, size, leaf or drawing material by its name; undefined where there is none. */
export const ground: (id: string) => GroundMaterial | undefined = index(grounds);
/** An agent of preparation that is neither oil nor solvent, by its name; undefined where there is none. */
export const agent: (id: string) => PreparationAgent | undefined = index(agents);

/** The places of a plan that take a material’s name. */
export type Role = 'medium' | 'binder' | 'resin' | 'support' | 'ground' | 'agent';

const ids = (table: readonly Named[]): string[] => table.map((entry) => entry.id);
const oils = () =>
  binders.filter((b) =>
    ['drying oil', 'semi-drying oil', 'alkyd', 'balsam', 'resin', 'wax'].includes(b.kind),
  );

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
