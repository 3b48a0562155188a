/**
 * The library: a text in, a plan, its study and its findings out; the reports made of them; the catalogue they rest on.
 * Lengths are µm, times days, temperatures °C, volumes ml, masses g, shares fractions of 1, colours CIELAB D65/2°, unless
 * a field says otherwise. No function here throws on any text, reads a file or opens a connection.
 */

// from a text to everything that is known of it
export { type Analyser, type Analysis, createAnalyser } from './analyse.ts';
// the catalogue, with its sources
export {
  type Description,
  describeMaterial,
  describePigment,
  type Row,
  sourceWords,
} from './features/describe.ts';
// notes, and the canonical form
export { type Fenced, fencedPlans } from './features/markdown.ts';
// colours: proportions for one, differences between two
export {
  labOfCss,
  layerOfMix,
  type Proposal,
  paintNames,
  propose,
  proposeFilm,
  type Wanted,
} from './features/propose.ts';
export {
  agent,
  binder,
  catalogue,
  type DataRecord,
  dataRecord,
  dataVersion,
  ground,
  lookupPigment,
  materialNames,
  type PigmentLookup,
  type Role,
  solvent,
  support,
} from './materials/catalogue.ts';
export type { Interval } from './materials/interval.ts';
export type * from './materials/types.ts';
export type { Lab } from './optics/cie.ts';
export { type OpticalData, opticalData } from './optics/data.ts';
export { deltaE00 } from './optics/difference.ts';
export type { Limit, Match, Recipe } from './optics/match.ts';
export type { ThicknessMatch } from './optics/match-thickness.ts';
export { loneHost, type PlanHost } from './plan/host.ts';
export { type Lines, linesOf } from './plan/lines.ts';
export { FILE_ENDING, LANGUAGE_ID, TOOL_NAME, TOOL_VERSION } from './plan/names.ts';
export type * from './plan/plan.ts';
// reports, and the JSON forms of the command line
export { buildReport } from './report/build.ts';
export {
  type CheckedFile,
  type CheckedFinding,
  type CheckJson,
  checkedFile,
  checkJson,
  type Elsewhere,
  type Input,
  type Range,
} from './report/checked.ts';
export {
  type Change,
  type Comparison,
  compare,
  comparisonReport,
  isSame,
  type Version,
} from './report/compare.ts';
export { type CompareJson, compareJson } from './report/compare-json.ts';
export type { Block, Cell, Part as ReportPart, Report } from './report/document.ts';
export { htmlReport } from './report/html.ts';
export { type MarkdownReport, markdownReport } from './report/markdown.ts';
export type { Markup } from './report/markup.ts';
export {
  type FilmMatchJson,
  filmMatchJson,
  type MatchJson,
  matchJson,
  type ThroughJson,
  throughJson,
} from './report/match-json.ts';
export { sectionDrawing } from './report/section.ts';
export type * from './results/study.ts';
// the rules
export type { CheckSettings } from './rules/check.ts';
export { rules } from './rules/index.ts';
export type { Finding, Rule, RuleReport } from './rules/rule.ts';
export { materialsCsv } from './studio/quantities.ts';
export { calendarIcs } from './study/calendar-ics.ts';
export { studyJson } from './study/json.ts';
export type * from './study/json-types.ts';
export { type Tool, tool } from './study/tool.ts';
export { format } from './syntax/format.ts';
