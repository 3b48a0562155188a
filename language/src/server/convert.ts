/** Places of a plan to ranges of the protocol, and findings to diagnostics. */
import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  DiagnosticSeverity,
  DiagnosticTag,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Lines } from '../plan/lines.ts';
import { TOOL_NAME } from '../plan/names.ts';
import type { Fix, Place, Severity } from '../plan/plan.ts';
import type { Finding } from '../rules/rule.ts';

/** Line indexes of files, by uri: of the open ones and of those read through `use`. */
export type LinesOf = (uri: string) => Lines;

export function rangeOf(place: Place, lines: Lines): Range {
  const start = lines.at(place.start);
  const end = lines.at(place.end);
  return {
    start: { line: start.line, character: start.column },
    end: { line: end.line, character: end.column },
  };
}

const SEVERITY: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export function diagnosticOf(finding: Finding, lines: LinesOf): Diagnostic {
  return {
    range: rangeOf(finding.place, lines(finding.place.uri)),
    severity: SEVERITY[finding.severity],
    source: TOOL_NAME,
    code: finding.rule,
    message: finding.message,
    ...(finding.unnecessary ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(finding.related.length > 0
      ? {
          relatedInformation: finding.related.map((r) => ({
            message: r.message,
            location: { uri: r.place.uri, range: rangeOf(r.place, lines(r.place.uri)) },
          })),
        }
      : {}),
  };
}

/** What is said of a plan on the disk that cannot be read, at its beginning. */
export const unread = (detail: string): Diagnostic => ({
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: SEVERITY.error,
  source: TOOL_NAME,
  message: `This plan is not checked: ${detail}.`,
});

export function editOf(fix: Fix, lines: LinesOf): WorkspaceEdit {
  const changes: Record<string, { range: Range; newText: string }[]> = {};
  for (const { place, text } of fix.edits) {
    changes[place.uri] ??= [];
    changes[place.uri]?.push({ range: rangeOf(place, lines(place.uri)), newText: text });
  }
  return { changes };
}

export function quickFix(fix: Fix, diagnostic: Diagnostic, lines: LinesOf): CodeAction {
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    edit: editOf(fix, lines),
  };
}
