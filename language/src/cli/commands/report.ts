import { watch } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fencedPlans } from '../../features/markdown.ts';
import { FILE_ENDING } from '../../plan/names.ts';
import { cards } from '../../report/card.ts';
import { type Asked, chosenSittings } from '../../report/card-choice.ts';
import { cardsPage } from '../../report/card-page.ts';
import type { Report } from '../../report/document.ts';
import { htmlReport } from '../../report/html.ts';
import { markdownReport } from '../../report/markdown.ts';
import { fillNote } from '../../report/note.ts';
import { sectionDrawing } from '../../report/section.ts';
import { refusal } from '../../server/system.ts';
import { materialsCsv } from '../../studio/quantities.ts';
import { calendarIcs } from '../../study/calendar-ics.ts';
import { studyJson } from '../../study/json.ts';
import { jsonText } from '../formats/json.ts';
import { graveLine } from '../formats/sums.ts';
import { hostFor } from '../host.ts';
import { type Input, isFolder, isNote, readEach, readFile } from '../input.ts';
import { CannotRun, say, tried } from '../say.ts';
import {
  isSame,
  isStandard,
  mustSpare,
  nameOf,
  pathOf,
  type ReportKind,
  type Target,
  targetsFor,
} from '../targets.ts';
import { makeFolder, mustHoldAll, writeMade, writeWhole } from '../write.ts';
import { studied } from './study.ts';

/** The report as one text, and the files that go beside it. */
function render(
  input: Input,
  kind: ReportKind,
  asked: Asked,
): { text: string; beside: ReadonlyMap<string, string>; failed: boolean; sum: string } {
  const { study, checked, report, notice, failed } = studied(input);
  const sum = graveLine(checked);
  const alone = (text: string) => ({ text, beside: new Map<string, string>(), failed, sum });
  switch (kind) {
    case 'html':
      return alone(htmlReport(report()));
    case 'md': {
      const { text, drawings } = markdownReport(report(), nameOf(input));
      return { text, beside: drawings, failed, sum };
    }
    case 'json':
      return alone(jsonText(studyJson(study, input.path, checked.findings)));
    case 'ics':
      if (!study.calendar.dated)
        throw new CannotRun(
          `${input.path} has no dates: a calendar needs ‘start’ with the first day of work, for instance start 2027-01-11.`,
        );
      return alone(calendarIcs(study, notice));
    case 'svg': {
      const drawing = sectionDrawing(study, 'section', notice);
      if (!drawing) throw new CannotRun(`${input.path} has no layers to draw.`);
      return alone(`${drawing.markup}\n`);
    }
    case 'csv':
      return alone(materialsCsv(study, notice));
    case 'card': {
      const chosen = chosenSittings(study, asked);
      if (typeof chosen === 'string') throw new CannotRun(`${input.path} ${chosen}`);
      return alone(cardsPage(study.plan.title ?? 'Untitled', cards(study, notice, chosen)));
    }
  }
}

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
  for (const f of filled.faults) say(`${input.path}:${f.line}: ${f.message}`);
  if (out === undefined) process.stdout.write(filled.text);
  else {
    const inside = isFolder(out);
    const target: Target = {
      folder: inside ? out : dirname(out),
      below: '',
      name: basename(inside ? input.path : out),
      named: !inside,
    };
    const path = pathOf(target);
    // to be filled in its own place is what a note is for
    const own = isSame(path, name);
    if (own) mustHoldAll(input, name);
    else mustSpare([path], [name]);
    writeAll(target, filled.text, filled.drawings, [name]);
    say(`${input.path} → ${path}`);
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

/** A text and what goes beside it. `inputs` are spared; so, but for the text itself, is what `target` names. */
function writeAll(
  target: Target,
  text: string,
  beside: ReadonlyMap<string, string>,
  inputs: readonly string[],
): void {
  const { folder, below, named } = target;
  const drawings = [...beside].map(([name, drawing]) => [join(folder, below, name), drawing] as const);
  mustSpare(
    drawings.map(([path]) => path),
    inputs,
  );
  makeFolder(folder, below);
  (named ? writeWhole : writeMade)(pathOf(target), text);
  for (const [path, drawing] of drawings) writeMade(path, drawing);
}

/** Inputs named in two ways are one. */
const unique = (inputs: readonly Input[]): Input[] => [
  ...new Map(inputs.map((i) => [`${i.uri}\n${i.text}`, i])).values(),
];

/** As on the command line: what to write and where; `sitting` and `date` of a card. */
export interface ReportOptions extends Asked {
  readonly to: ReportKind;
  readonly out?: string;
}

/** Writes each report; to standard output where it is one text, one plan, and no `--out`. Says on standard error what was written. */
export function reportCommand(names: readonly string[], options: ReportOptions): number {
  const { to, out } = options;
  if (to !== 'card' && (options.sitting !== undefined || options.date !== undefined))
    throw new CannotRun('Only a report --to card is of one sitting: leave --sitting and --date out.');
  const [only] = names;
  if (names.length === 1 && only !== undefined && isNote(only) && to === 'md') return note(only, out);
  let { inputs: read, all } = readEach(names);
  const inputs = unique(read);
  const several = names.length > 1 || inputs.length > 1;
  const targetOf = targetsFor({ names, several, to, out });
  const spared = [...names, ...inputs.filter((i) => !isStandard(i)).map((i) => fileURLToPath(i.uri))];
  let failed = false;
  for (const input of inputs) {
    const done = tried(() => {
      const target = out === undefined && !several ? undefined : targetOf(input);
      if (target) mustSpare([pathOf(target)], spared);
      const result = render(input, to, options);
      failed ||= result.failed;
      if (target) {
        writeAll(target, result.text, result.beside, spared);
        say(`${input.path} → ${pathOf(target)}: ${result.sum}`);
      } else {
        process.stdout.write(result.text);
        say(`${input.path}: ${result.sum}`);
        if (result.beside.size > 0) say('The drawings are written only with --out PATH.');
      }
    });
    all &&= done;
  }
  return all ? (failed ? 1 : 0) : 2;
}

/** Writes the reports, and again whenever a plan in the folders of the named files changes, until it is stopped. */
export function watchReports(names: readonly string[], options: ReportOptions): Promise<never> {
  if (names.includes('-')) throw new CannotRun('Standard input cannot be watched.');
  // half-saved or moved for a moment: what is wrong is said, and the next change tries again
  const again = () => tried(() => reportCommand(names, { ...options, out: options.out ?? '.' }));
  again();
  let timer: NodeJS.Timeout | undefined;
  for (const folder of new Set(names.map((n) => (isFolder(n) ? n : dirname(n))))) {
    const stopped = (error: unknown) => new CannotRun(`${folder} cannot be watched: ${refusal(error)}.`);
    try {
      watch(folder, (_, changed) => {
        if (!changed || !(changed.endsWith(FILE_ENDING) || isNote(changed))) return;
        clearTimeout(timer);
        timer = setTimeout(again, 100);
      }).on('error', (error) => say(stopped(error).message));
    } catch (error) {
      throw stopped(error);
    }
  }
  say('Watching; stop with Control+C.');
  return new Promise(() => {});
}
