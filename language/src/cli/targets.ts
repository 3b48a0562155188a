/** Where reports go: each to a place of its own, and none to where it would destroy what was written by hand. */
import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FILE_ENDING } from '../plan/names.ts';
import { type Input, isFolder } from './input.ts';
import { CannotRun } from './say.ts';

/** Kinds of reports, with the endings that their files have. */
const ENDINGS = {
  html: ['html', 'htm'],
  md: ['md', 'markdown'],
  json: ['json'],
  ics: ['ics'],
  svg: ['svg'],
  csv: ['csv'],
  card: ['html', 'htm'],
} as const;

export type ReportKind = keyof typeof ENDINGS;
export const REPORTS = Object.keys(ENDINGS) as readonly ReportKind[];

/** What the names of reports end in where the user names none: a card stands beside the page of its plan. */
const endingFor = (to: ReportKind): string => (to === 'card' ? 'card.html' : to);

/** A file to be written. */
export interface Target {
  /** the folder it is written to: as the user named it, or the input's own */
  readonly folder: string;
  /** folders below that one, kept from the inputs */
  readonly below: string;
  readonly name: string;
  /** whether the user named the file itself */
  readonly named: boolean;
}

export const pathOf = ({ folder, below, name }: Target): string => join(folder, below, name);

export const isStandard = (input: Input): boolean => input.path === '<standard input>';

/** A plan's name without its ending, which the files made of it get. */
export const nameOf = (input: Input): string =>
  isStandard(input) ? 'plan' : basename(input.path).replace(/\.(paintplan|md|markdown)$/i, '');

const endingOf = (path: string): string | undefined => /[^./\\]\.([a-z]+)$/i.exec(path)?.[1]?.toLowerCase();

/** The deepest folder that holds all of these. */
function shared(folders: readonly string[]): string {
  const [first = [], ...rest] = folders.map((f) => f.split(sep));
  const parted = first.findIndex((step, i) => rest.some((r) => r[i] !== step));
  return (parted < 0 ? first : first.slice(0, parted)).join(sep) + sep;
}

/** From that folder down to the one of a file; empty where they lie on different disks. */
function kept(base: string, input: Input): string {
  const way = relative(base, dirname(fileURLToPath(input.uri)));
  return isAbsolute(way) || way.startsWith('..') ? '' : way;
}

/** What the user named: `names` and `out` as on the command line, `several` whether they stand for more than one plan. */
export interface Wanted {
  readonly names: readonly string[];
  readonly several: boolean;
  readonly to: ReportKind;
  readonly out: string | undefined;
}

/** A file that was named for a report must be able to hold one of that kind. */
function mustFit(out: string, to: ReportKind): void {
  const ending = endingOf(out);
  if (ending !== undefined && !(ENDINGS[to] as readonly string[]).includes(ending))
    throw new CannotRun(
      ending === FILE_ENDING.slice(1)
        ? `${out} is left alone: a report is not written over a plan. Name a file that ends in .${ENDINGS[to][0]}.`
        : `${out} is not written: a report --to ${to} does not end in .${ending}. Name a file that ends in .${ENDINGS[to][0]}.`,
    );
}

/**
 * Gives each input its target. Below a folder that was named after `--out`, the inputs' folders are kept from where they
 * part. Throws CannotRun, also for an input whose target another has.
 */
export function targetsFor({ names, several, to, out }: Wanted): (input: Input) => Target {
  const slash = out !== undefined && /[\\/]$/.test(out);
  const whole = several || names.some(isFolder);
  const into = out !== undefined && (slash || isFolder(out) || (whole && endingOf(out) === undefined));
  if (out !== undefined && !into && several)
    throw new CannotRun(
      `Several plans do not go into one file: give a folder after --out, for instance ${dirname(out)}/.`,
    );
  if (out !== undefined && !into) mustFit(out, to);
  const base = shared(
    names.filter((n) => n !== '-').map((n) => (isFolder(n) ? resolve(n) : dirname(resolve(n)))),
  );
  const plans = new Map<string, number>();
  const taken = new Map<string, Input>();
  return (input) => {
    if (out !== undefined && !into)
      return { folder: dirname(out), below: '', name: basename(out), named: true };
    // plans of one note share its name: the second and later ones get a number
    const n = (plans.get(input.path) ?? 0) + 1;
    plans.set(input.path, n);
    const target: Target = {
      folder: out ?? dirname(input.path),
      below: out === undefined || isStandard(input) ? '' : kept(base, input),
      name: `${nameOf(input)}${n === 1 ? '' : `-${n}`}.${endingFor(to)}`,
      named: false,
    };
    const other = taken.get(pathOf(target));
    if (other)
      throw new CannotRun(
        `${input.path} is left out: ${pathOf(target)} is the report on ${other.path}. Give it a folder of its own.`,
      );
    taken.set(pathOf(target), input);
    return target;
  };
}

/** What tells a file on the disk from every other; undefined where there is none. */
function identity(path: string): readonly string[] | undefined {
  try {
    const { dev, ino } = statSync(path, { bigint: true });
    // some systems number no files
    return [realpathSync.native(path), ...(ino > 0n ? [`${dev} ${ino}`] : [])];
  } catch {
    return undefined;
  }
}

export function isSame(one: string, other: string): boolean {
  const known = identity(one) ?? [];
  return (identity(other) ?? []).some((i) => known.includes(i));
}

/** Throws CannotRun where a path is, by whatever name, one of the inputs or a plan. */
export function mustSpare(paths: readonly string[], inputs: readonly string[]): void {
  const known = new Set(inputs.flatMap((i) => identity(i) ?? []));
  for (const path of paths) {
    const there = identity(path) ?? [];
    if (there.some((t) => known.has(t)))
      throw new CannotRun(
        `${path} is left alone: it is read here, and a report would destroy it. Name another file.`,
      );
    if ([path, ...there].some((p) => p.toLowerCase().endsWith(FILE_ENDING)))
      throw new CannotRun(`${path} is left alone: a report is not written over a plan. Name another file.`);
  }
}
