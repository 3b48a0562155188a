/** The library: a text in, a plan, its study and its findings out; and the reports made of them. */
export { type Analyser, type Analysis, createAnalyser } from './analyse.ts';
export type { Interval } from './materials/interval.ts';
export type { PlanHost } from './plan/host.ts';
export { linesOf } from './plan/lines.ts';
export type * from './plan/plan.ts';
export { buildReport } from './report/build.ts';
export { htmlReport } from './report/html.ts';
export { markdownReport } from './report/markdown.ts';
export { sectionDrawing } from './report/section.ts';
export { rules } from './rules/index.ts';
export type { Finding, Rule } from './rules/rule.ts';
export { studyJson } from './study/json.ts';
export type * from './study/study.ts';
export { format } from './syntax/format.ts';
