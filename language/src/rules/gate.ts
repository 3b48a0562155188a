/**
 * The one gate a fix passes before it is offered: it is put in, the text is read and judged again as a whole, and only what
 * takes its own finding away and adds no warning and no error comes through; another pigment may add no remark either. Done
 * when someone asks for fixes, never while checking.
 */
import { loneHost, type PlanHost } from '../plan/host.ts';
import { createPlanMemo, type PlanMemo } from '../plan/memo.ts';
import type { Fix, Plan, Severity } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import type { Study } from '../results/study.ts';
import { createStudyMemo, type StudyMemo, study } from '../study/build.ts';
import type { Finding } from './rule.ts';
import type { Patience, Reread } from './trial.ts';

/** Texts tried that are kept. */
const MOST_KEPT = 8;

/** `know`: what was learned of the text so far, for a memory of its own that begins with that. */
export function createReread(
  uri: string,
  know = (): [PlanMemo, StudyMemo] => [createPlanMemo(), createStudyMemo()],
): Reread {
  let known: [PlanMemo, StudyMemo] | undefined;
  return (text, host) => {
    known ??= know();
    const [planMemo, studyMemo] = known;
    const plan = readPlan(text, uri, host, planMemo);
    return { plan, study: study(plan, studyMemo) };
  };
}

/** The text after a fix; undefined where its edits overlap, lie in another file or change nothing. */
export function applied(text: string, uri: string, { edits }: Fix): string | undefined {
  let out = '';
  let at = 0;
  for (const { place, text: put } of edits.toSorted((a, b) => a.place.start - b.place.start)) {
    if (place.uri !== uri || place.start < at || place.end < place.start) return undefined;
    out += text.slice(at, place.start) + put;
    at = place.end;
  }
  out += text.slice(at);
  return out === text ? undefined : out;
}

/** The files beside a plan, as they were read for it. */
export function asRead(plan: Plan): PlanHost {
  const targets = new Map<string, ReturnType<PlanHost['resolve']>>();
  const files = new Map<string, ReturnType<PlanHost['read']>>();
  const walk = ({ uri, uses }: Plan): void => {
    for (const use of uses) {
      targets.set(`${uri}\n${use.path}`, use.uri === undefined ? { outside: true } : { uri: use.uri });
      if (use.uri === undefined || files.has(use.uri)) continue;
      if (use.plan?.text !== undefined) {
        files.set(use.uri, { text: use.plan.text });
        walk(use.plan);
      } else if (use.status === 'missing' || use.status === 'unreadable' || use.status === 'too-large')
        files.set(use.uri, { failed: use.status, detail: use.detail });
    }
  };
  walk(plan);
  return {
    resolve: (path, from) => targets.get(`${from}\n${path}`) ?? loneHost.resolve(path, from),
    read: (uri) => files.get(uri) ?? loneHost.read(uri),
  };
}

/** A plan and what the rules say to it. */
export interface Judged {
  readonly plan: Plan;
  readonly found: readonly Finding[];
}

const GRAVE: readonly Severity[] = ['error', 'warning'];
/** All that is more than a hint: what another pigment may not bring either. */
const TOLD: readonly Severity[] = [...GRAVE, 'info'];

/** The layer a finding is about, by its name, which no fix changes. */
const about = ({ plan }: Judged, f: Finding): string =>
  (f.layer === undefined ? undefined : plan.layers[f.layer]?.name) ?? '';

/** How many findings of each of these severities each rule has on each layer. */
function counted(judged: Judged, severities: readonly Severity[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const f of judged.found) {
    if (!severities.includes(f.severity)) continue;
    const key = `${f.rule} ${f.severity} ${about(judged, f)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/** Whether a plan read again after a change has more findings of any of these severities than it had. */
export const worsened = (
  before: Judged,
  severities: readonly Severity[] = GRAVE,
): ((after: Judged) => boolean) => {
  const known = counted(before, severities);
  return (after) => [...counted(after, severities)].some(([key, n]) => n > (known.get(key) ?? 0));
};

/** Whether `after` has one finding less of the rule, on the layer it was about too, and no more of any of these severities. */
function mends(finding: Finding, before: Judged, after: Judged, severities: readonly Severity[]): boolean {
  const own = (judged: Judged) => judged.found.filter((f) => f.rule === finding.rule);
  const where = about(before, finding);
  const here = (judged: Judged) => own(judged).filter((f) => about(judged, f) === where);
  if (own(after).length >= own(before).length || here(after).length >= here(before).length) return false;
  return !worsened(before, severities)(after);
}

/**
 * Which of a finding's fixes keep their promise; undefined where patience is at its end. `judge` runs the rules, those that
 * need colours too; `found` is what they said of the plan, where that is known.
 */
export function gate(
  plan: Plan,
  first: Study,
  judge: (plan: Plan, study: Study) => readonly Finding[],
  found: readonly Finding[] | undefined,
  reread: Reread = createReread(plan.uri),
  patience: Patience = { left: Number.POSITIVE_INFINITY, untried: 0 },
): (
  finding: Finding,
  fixes: readonly Fix[],
  bringing?: 'nothing grave' | 'nothing',
) => readonly Fix[] | undefined {
  const { text } = plan;
  const host = asRead(plan);
  let before: Judged | undefined;
  /** the last few texts tried: one pigment that several rules object to is exchanged once */
  const tried = new Map<string, Judged>();
  const after = (changed: string): Judged => {
    const known = tried.get(changed);
    if (known) return known;
    patience.left -= changed.length;
    const { plan: then, study: of } = reread(changed, host);
    const judged = { plan: then, found: judge(then, of) };
    const [oldest] = tried.size >= MOST_KEPT ? tried.keys() : [];
    if (oldest !== undefined) tried.delete(oldest);
    tried.set(changed, judged);
    return judged;
  };
  return (finding, fixes, bringing = 'nothing grave') => {
    // a plan made otherwise than from a text cannot be tried
    if (text === undefined || fixes.length === 0) return fixes;
    if (patience.left <= 0) {
      patience.untried++;
      return undefined;
    }
    before ??= { plan, found: found ?? judge(plan, first) };
    const was = before;
    const none = bringing === 'nothing' ? TOLD : GRAVE;
    return fixes.filter((fix) => {
      const changed = applied(text, plan.uri, fix);
      if (changed === undefined) return false;
      return mends(finding, was, after(changed), none);
    });
  };
}
