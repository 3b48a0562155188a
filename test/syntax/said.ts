/** What each declaration of a plan says, without where it stands or what other declarations make of its names. */
import type { Plan } from '../../language/src/plan/plan.ts';

/** Properties of a Plan that say where something stands. */
export const PLACES = [
  'place',
  'namePlace',
  'kindPlace',
  'wordPlace',
  'rulePlace',
  'pathPlace',
  'insertField',
  'uri',
] as const;

const RESOLVED = new Set<string>([
  ...PLACES,
  'is',
  'near',
  'known',
  'areas',
  'everywhere',
  'index',
  'pigment',
  'plan',
  'misplaced',
]);

const bare = (value: unknown): string =>
  JSON.stringify(value, (key, v) => (RESOLVED.has(key) ? undefined : v));

export interface Saying {
  /** where it stands, to know which declaration a cut falls into */
  readonly start: number;
  readonly end: number;
  readonly words: string;
  /** its fields one by one, for layers */
  readonly fields: readonly string[];
}

/** All of them, in the order of the text. */
export function sayings(plan: Plan): Saying[] {
  const named = (
    kind: string,
    list: readonly { readonly place: { start: number; end: number } }[],
  ): Saying[] => list.map((d) => ({ ...d.place, words: `${kind} ${bare(d)}`, fields: [] }));
  const { places, ...studio } = { ...plan.studio, places: plan.studio.place };
  const all: Saying[] = [
    ...named('use', plan.uses),
    ...named('area', plan.implicitArea ? [] : plan.areas),
    ...named(
      'group',
      plan.groups.map((g) => ({ ...g, members: g.members.map((m) => m.name) })),
    ),
    ...named('pigment', plan.pigments),
    ...named('paint', plan.paints),
    ...named('medium', plan.mediums),
    ...named('mix', plan.mixes),
    ...plan.layers.map((l) => ({
      ...l.place,
      words: `layer ${bare(l)}`,
      fields: [
        l.on.length || l.except.length ? [l.on, l.except] : undefined,
        ...l.prepare,
        l.colour,
        l.medium,
        l.resin,
        l.material,
        l.film,
        l.coats,
        l.wipeOut.length ? l.wipeOut : undefined,
        l.wait,
        l.after,
        l.painted,
        l.dry,
        ...l.measured,
        l.made,
        ...l.evidence,
        ...l.allows,
        ...l.notes,
      ]
        .filter((f) => f !== undefined)
        .map(bare),
    })),
    ...named('target', plan.targets),
    ...named('sample', plan.samples),
    ...named('allow', plan.allows),
    ...(plan.support ? named('support', [plan.support]) : []),
    ...(places ? [{ ...places, words: `studio ${bare(studio)}`, fields: [] }] : []),
    ...(plan.headPlace ? [{ ...plan.headPlace, words: `head ${plan.kind} ${plan.title}`, fields: [] }] : []),
    ...(plan.start ? [{ ...plan.start.place, words: `start ${plan.start.iso}`, fields: [] }] : []),
    ...(plan.made
      ? [{ ...plan.made.place, words: `made ${plan.made.from} ${plan.made.to}`, fields: [] }]
      : []),
    ...(plan.language
      ? [{ ...plan.language.place, words: `paintplan ${plan.language.value}`, fields: [] }]
      : []),
    ...plan.notes.map((n) => ({ start: -1, end: -1, words: `note ${n}`, fields: [] })),
  ];
  return all.sort((a, b) => a.start - b.start);
}

/** Those of `before` that `after` no longer says; each may be used once. */
export function lost(before: readonly string[], after: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const a of after) left.set(a, (left.get(a) ?? 0) + 1);
  return before.filter((b) => {
    const n = left.get(b) ?? 0;
    if (n > 0) left.set(b, n - 1);
    return n === 0;
  });
}
