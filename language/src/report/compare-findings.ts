/** Findings of two versions, paired by rule and by what they are about, so that one that stays is not told as two. */
import type { Plan } from '../plan/plan.ts';
import type { Finding } from '../rules/rule.ts';

export interface Findings {
  readonly plan: Plan;
  readonly findings: readonly Finding[];
}

export interface ChangedFinding {
  readonly rule: string;
  /** name of the layer or declaration it is about; empty for the whole file */
  readonly about: string;
  readonly before: string;
  readonly after: string;
}

export interface FindingsCompared {
  readonly gained: readonly string[];
  readonly lost: readonly string[];
  /** the same rule about the same thing, in other words or of another severity; not where only figures moved */
  readonly changed: readonly ChangedFinding[];
}

const words = (f: Finding) => `${f.severity} ${f.rule}: ${f.message}`;

/** Without figures: those are compared with the layers. */
const bare = (f: Finding) =>
  words(f)
    .replace(/[-−]?\d+(?:[.,]\d+)*/g, '#')
    .replace(/#(?:–#|\.\.#)/g, '#');

/** The layer or the declaration a finding stands in. */
function about(plan: Plan, f: Finding): string {
  const layer = f.layer === undefined ? undefined : plan.layers[f.layer];
  if (layer) return layer.name;
  const named = [
    ...plan.layers,
    ...plan.areas,
    ...plan.groups,
    ...plan.pigments,
    ...plan.paints,
    ...plan.mediums,
    ...plan.mixes,
    ...plan.samples,
  ];
  const { place } = f;
  return (
    named.find((d) => d.place.uri === place.uri && d.place.start <= place.start && place.start < d.place.end)
      ?.name ?? ''
  );
}

/** Takes out the pairs that are alike by a key, first with first; what is left of both. */
function unpaired(
  before: readonly Finding[],
  after: readonly Finding[],
  key: (f: Finding, of: 'before' | 'after') => string,
  paired: (before: Finding, after: Finding) => void = () => {},
): readonly [Finding[], Finding[]] {
  const waiting = new Map<string, Finding[]>();
  for (const f of before) {
    const k = key(f, 'before');
    waiting.set(k, [...(waiting.get(k) ?? []), f]);
  }
  const left = after.filter((f) => {
    const mate = waiting.get(key(f, 'after'))?.shift();
    if (mate) paired(mate, f);
    return !mate;
  });
  const still = new Set([...waiting.values()].flat());
  return [before.filter((f) => still.has(f)), left];
}

export function compareFindings(before: Findings, after: Findings): FindingsCompared {
  const of = { before: before.plan, after: after.plan };
  const place = (f: Finding, which: 'before' | 'after') => `${f.rule}\n${about(of[which], f)}`;
  const changed: ChangedFinding[] = [];
  let left = unpaired(before.findings, after.findings, words);
  left = unpaired(...left, (f, which) => `${bare(f)}\n${place(f, which)}`);
  left = unpaired(...left, place, (a, b) =>
    changed.push({ rule: a.rule, about: about(of.before, a), before: words(a), after: words(b) }),
  );
  return { gained: left[1].map(words), lost: left[0].map(words), changed };
}
