/** Findings with lines and columns (1-based), as every format prints them. */
import { type Lines, linesOf } from '../plan/lines.ts';
import type { Place, Severity } from '../plan/plan.ts';
import type { Finding } from '../rules/rule.ts';
import type { Instead } from '../rules/shared/instead.ts';
import type { Patience } from '../rules/trial.ts';
import { type Tool, tool } from '../study/tool.ts';

/** A stretch of a file. Lines and columns count from 1, columns in UTF-16 code units; `end` is exclusive. */
export interface Range {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

/** A finding as JSON has it: its offsets turned into lines and columns. */
export interface CheckedFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly range: Range;
  readonly related: readonly { readonly message: string; readonly path: string; readonly range: Range }[];
  readonly fixes: readonly {
    readonly title: string;
    readonly edits: readonly { readonly range: Range; readonly text: string }[];
  }[];
  /** pigments to take instead of the one objected to, the nearest by predicted colour first; left out where there is none */
  readonly instead?: readonly Instead[];
}

/** The findings on one file. */
export interface CheckedFile {
  readonly path: string;
  readonly findings: readonly CheckedFinding[];
  /** findings whose fixes were not tried, and so not listed, because the text is long; an editor tries them where it is asked */
  readonly fixesUntried?: number;
}

/** What `check --format json` prints; its schema is `check.schema.json`. */
export interface CheckJson {
  readonly version: '1';
  readonly tool: Tool;
  readonly files: readonly CheckedFile[];
}

/** A text with its names: `path` as people are shown it, with forward slashes; `uri` as the analyser is given it. */
export interface Input {
  readonly path: string;
  readonly uri: string;
  readonly text: string;
}

/** Where other files named by a finding are read and shown from. */
export interface Elsewhere {
  /** the text of another file, undefined where it cannot be read */
  text(uri: string): string | undefined;
  /** how another file is shown */
  path(uri: string): string;
}

const nowhere: Elsewhere = { text: () => undefined, path: (uri) => uri };

/**
 * Findings of `input` with lines and columns. `elsewhere` gives the files that related places lie in; without it such a
 * place is shown at the beginning of its uri. Fixes are worked out here, as far as the `patience` the findings were made with goes.
 */
export function checkedFile(
  input: Input,
  found: readonly Finding[],
  elsewhere: Elsewhere = nowhere,
  patience?: Patience,
): CheckedFile {
  const lines = new Map<string, Lines>([[input.uri, linesOf(input.text)]]);
  const range = (place: Place): Range => {
    let of = lines.get(place.uri);
    if (!of) {
      of = linesOf(elsewhere.text(place.uri) ?? '');
      lines.set(place.uri, of);
    }
    const start = of.at(place.start);
    const end = of.at(place.end);
    return {
      start: { line: start.line + 1, column: start.column + 1 },
      end: { line: end.line + 1, column: end.column + 1 },
    };
  };
  const findings = found.map(
    (f): CheckedFinding => ({
      rule: f.rule,
      severity: f.severity,
      message: f.message,
      range: range(f.place),
      related: f.related.map((r) => ({
        message: r.message,
        path: r.place.uri === input.uri ? input.path : elsewhere.path(r.place.uri),
        range: range(r.place),
      })),
      fixes: f.fixes.map((fix) => ({
        title: fix.title,
        edits: fix.edits.map((e) => ({ range: range(e.place), text: e.text })),
      })),
      ...(f.instead && f.instead.length > 0 ? { instead: f.instead.map(({ fix: _, ...told }) => told) } : {}),
    }),
  );
  const untried = patience?.untried ?? 0;
  return { path: input.path, findings, ...(untried > 0 ? { fixesUntried: untried } : {}) };
}

/** The public JSON form of `check`. */
export const checkJson = (files: readonly CheckedFile[]): CheckJson => ({ version: '1', tool, files });
