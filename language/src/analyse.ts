/**
 * The corridor, walked once: text → plan → study → findings. Keeps what it learned between calls, so that a changed
 * text costs only what changed.
 */
import { loneHost, type PlanHost } from './plan/host.ts';
import { forkPlanMemo } from './plan/memo.ts';
import type { Plan } from './plan/plan.ts';
import { createPlanMemo, readPlan } from './plan/read.ts';
import type { Study } from './results/study.ts';
import { type CheckSettings, findings } from './rules/check.ts';
import { createReread } from './rules/gate.ts';
import type { Finding } from './rules/rule.ts';
import type { Reread } from './rules/trial.ts';
import { createStudyMemo, forkStudyMemo, study } from './study/build.ts';

/**
 * One text, read and studied. `study` computes its colours when asked; `findings` runs the rules, with severities set
 * from outside where given.
 */
export interface Analysis {
  readonly plan: Plan;
  readonly study: Study;
  findings(settings?: CheckSettings): Finding[];
}

/**
 * Reads and studies a text. `uri` names it in every place of a finding; `host` reaches the files it uses (none
 * without it). Never throws, on any text.
 */
export type Analyser = (text: string, uri: string, host?: PlanHost) => Analysis;

/** An analyser with a memory of its own: one per open file, or one for a run over many files. */
export function createAnalyser(): Analyser {
  const planMemo = createPlanMemo();
  const studyMemo = createStudyMemo();
  const rereads = new Map<string, Reread>();
  return (text, uri, host = loneHost) => {
    const plan = readPlan(text, uri, host, planMemo);
    const result = study(plan, studyMemo);
    return {
      plan,
      study: result,
      findings(settings) {
        let reread = rereads.get(uri);
        if (!reread) {
          // only the last file's, or a run over many would keep them all
          rereads.clear();
          reread = createReread(uri, () => [forkPlanMemo(planMemo), forkStudyMemo(studyMemo)]);
          rereads.set(uri, reread);
        }
        return findings(result.plan, result, { ...settings, reread });
      },
    };
  };
}
