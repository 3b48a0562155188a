import { mkdirSync, realpathSync, statSync, watch } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fencedPlans } from '../../features/markdown.ts';
import { FILE_ENDING } from '../../plan/names.ts';
import type { Report } from '../../report/document.ts';
import { htmlReport } from '../../report/html.ts';
import { markdownReport } from '../../report/markdown.ts';
import { fillNote } from '../../report/note.ts';
import { sectionDrawing } from '../../report/section.ts';
import { materialsCsv } from '../../studio/quantities.ts';
import { calendarIcs } from '../../study/calendar-ics.ts';
import { studyJson } from '../../study/json.ts';
import { jsonText } from '../formats/json.ts';
import { hostFor } from '../host.ts';
import { CannotRun, type Input, isNote, readFile, readInputs } from '../input.ts';
import { mustHoldAll, writeMade, writeWhole } from '../write.ts';
import { studied } from './study.ts';

export const REPORTS = ['html', 'md', 'json', 'ics', 'svg', 'csv'] as const;
export type ReportKind = (typeof REPORTS)[number];

const nameOf = (input: Input) =>
  input.path === '<standard input>'
    ? 'plan'
    : basename(input.path).replace(/\.(paintplan|md|markdown)$/i, '');

/** The report as one text, and the files that go beside it. */
function render(
  input: Input,
  kind: ReportKind,
): { text: string; beside: ReadonlyMap<string, string>; failed: boolean } {
  const { study, checked, report, failed } = studied(input);
  const alone = (text: string) => ({ text, beside: new Map<string, string>(), failed });
  switch (kind) {
    case 'html':
      return alone(htmlReport(report()));
    case 'md': {
      const { text, drawings } = markdownReport(report(), nameOf(input));
      return { text, beside: drawings, failed };
    }
    case 'json':
      return alone(jsonText(studyJson(study, input.path, checked.findings)));
    case 'ics':
      if (!study.calendar.dated)
        throw new CannotRun(
          `${input.path} has no dates: a calendar needs ‘start’ with the first day of work, for instance start 2027-01-11.`,
        );
      return alone(calendarIcs(study));
    case 'svg': {
      const drawing = sectionDrawing(study);
      if (!drawing) throw new CannotRun(`${input.path} has no layers to draw.`);
      return alone(`${drawing.markup}\n`);
    }
    case 'csv':
      return alone(materialsCsv(study));
  }
}

/** Plans of one note share its name: the second and later ones get a number. */
function numbered(input: Input, seen: Map<string, number>): string {
  const n = (seen.get(input.path) ?? 0) + 1;
  seen.set(input.path, n);
  return n === 1 ? nameOf(input) : `${nameOf(input)}-${n}`;
}

function isSame(one: string, other: string): boolean {
  try {
    return realpathSync(one) === realpathSync(other);
  } catch {
    return false;
  }
}

const isFolder = (path: string) => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/** A Markdown note, its marked places filled from the plans fenced in it or named by it. */
function note(name: string, out: string | undefined): number {
  const input = readFile(name);
  const plans = fencedPlans(input.text).map((f) => ({
    start: f.start,
    report: once(() => studied({ ...input, text: f.text }).report()),
  }));
  const files = new Map<string, Report | undefined>();
  // a note may come from someone else: what it names is read as what a plan names with `use`
  const host = hostFor([input]);
  const fileReport = (path: string): Report | undefined => {
    if (!files.has(path)) {
      const target = host.resolve(path, input.uri);
      const read = 'uri' in target ? host.read(target.uri) : undefined;
      files.set(
        path,
        'uri' in target && read && 'text' in read
          ? studied({ path, uri: target.uri, text: read.text }).report()
          : undefined,
      );
    }
    return files.get(path);
  };
  const filled = fillNote(
    input.text,
    basename(input.path).replace(/\.[^.]+$/, ''),
    (offset) =>
      plans
        .filter((p) => p.start < offset)
        .at(-1)
        ?.report(),
    fileReport,
  );
  for (const f of filled.faults) console.error(`${input.path}:${f.line}: ${f.message}`);
  if (out === undefined) process.stdout.write(filled.text);
  else {
    const path = isFolder(out) ? join(out, basename(input.path)) : out;
    if (isSame(path, name)) mustHoldAll(input, name);
    writeAll(path, path === out, filled.text, filled.drawings);
    console.error(`${input.path} → ${path}`);
  }
  return filled.faults.length > 0 ? 1 : 0;
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function writeAll(path: string, named: boolean, text: string, beside: ReadonlyMap<string, string>): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
  } catch (error) {
    throw new CannotRun(`${path} cannot be written (${(error as NodeJS.ErrnoException).code ?? error}).`);
  }
  (named ? writeWhole : writeMade)(path, text);
  for (const [name, drawing] of beside) writeMade(join(dirname(path), name), drawing);
}

/** Writes each report; to standard output where it is one text, one plan, and no `--out`. Says on standard error what was written. */
export function reportCommand(
  names: readonly string[],
  options: { readonly to: ReportKind; readonly out?: string },
): number {
  const { to, out } = options;
  const [only] = names;
  if (names.length === 1 && only !== undefined && isNote(only) && to === 'md') return note(only, out);
  const inputs = readInputs(names);
  if (inputs.length > 1 && out !== undefined && !isFolder(out) && /\.[a-z]+$/i.test(out))
    throw new CannotRun(
      `${inputs.length} plans do not go into one file: give a folder after --out, for instance ${dirname(out)}/.`,
    );
  const seen = new Map<string, number>();
  const intoFolder = out !== undefined && (inputs.length > 1 || isFolder(out) || out.endsWith('/'));
  let failed = false;
  for (const input of inputs) {
    const result = render(input, to);
    failed ||= result.failed;
    if (out === undefined && inputs.length === 1) {
      process.stdout.write(result.text);
      if (result.beside.size > 0) console.error('The drawings are written only with --out PATH.');
      continue;
    }
    const path =
      out === undefined || intoFolder
        ? join(out ?? dirname(input.path), `${numbered(input, seen)}.${to}`)
        : out;
    writeAll(path, path === out, result.text, result.beside);
    console.error(`${input.path} → ${path}`);
  }
  return failed ? 1 : 0;
}

/** Writes the reports, and again whenever a plan in the folders of the named files changes, until it is stopped. */
export function watchReports(
  names: readonly string[],
  options: { readonly to: ReportKind; readonly out?: string },
): Promise<never> {
  if (names.includes('-')) throw new CannotRun('Standard input cannot be watched.');
  const again = () => {
    try {
      reportCommand(names, { ...options, out: options.out ?? '.' });
    } catch (error) {
      if (!(error instanceof CannotRun)) throw error;
      // half-saved or moved for a moment: what is wrong is said, and the next change tries again
      console.error(error.message);
    }
  };
  again();
  let timer: NodeJS.Timeout | undefined;
  for (const folder of new Set(names.map((n) => (isFolder(n) ? n : dirname(n)))))
    watch(folder, (_, changed) => {
      if (!changed || !(changed.endsWith(FILE_ENDING) || isNote(changed))) return;
      clearTimeout(timer);
      timer = setTimeout(again, 100);
    });
  console.error('Watching; stop with Control+C.');
  return new Promise(() => {});
}
