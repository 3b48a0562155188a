/** Findings with lines and columns (1-based), as every format prints them. */
import { type Lines, linesOf } from '../../plan/lines.ts';
import type { Place, Severity } from '../../plan/plan.ts';
import type { Finding } from '../../rules/rule.ts';
import type { Input } from '../input.ts';

export interface Range {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

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
}

export interface CheckedFile {
  readonly path: string;
  readonly findings: readonly CheckedFinding[];
}

/** Where other files named by a finding are read and shown from. */
export interface Elsewhere {
  text(uri: string): string | undefined;
  path(uri: string): string;
}

export function checkedFile(input: Input, found: readonly Finding[], elsewhere: Elsewhere): CheckedFile {
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
  return {
    path: input.path,
    findings: found.map((f) => ({
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
    })),
  };
}

const ORDER: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

export function counted(files: readonly CheckedFile[]): Record<Severity, number> {
  const count = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const file of files) for (const f of file.findings) count[f.severity]++;
  return count;
}

export function sumLine(files: readonly CheckedFile[]): string {
  const count = counted(files);
  const parts = ORDER.filter((s) => count[s] > 0).map(
    (s) => `${count[s]} ${s}${count[s] === 1 || s === 'info' ? '' : 's'}`,
  );
  const where = files.length === 1 ? '' : ` in ${files.length} files`;
  return parts.length > 0 ? `${parts.join(', ')}${where}` : `Nothing to report${where}`;
}
