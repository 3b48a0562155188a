/** The report of an open plan as a page's inside, with where its layers stand in the text. */
import type { Connection } from 'vscode-languageserver';
import { day } from '../features/figures.ts';
import { buildReport } from '../report/build.ts';
import { bodyMarkup } from '../report/html.ts';
import { STYLE } from '../report/style.ts';
import type { Documents } from './documents.ts';

export interface Preview {
  readonly title: string;
  readonly version: number;
  readonly body: string;
  readonly style: string;
  /** first and last line of each layer, zero-based */
  readonly layers: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  readonly errors: number;
  readonly warnings: number;
  /** the next day something is due, where the plan has dates */
  readonly next?: { readonly layer: string; readonly day: string };
}

export function answerPreviews(connection: Connection, documents: Documents): void {
  connection.onRequest('paintplan/preview', ({ uri }: { uri: string }): Preview | null => {
    const open = documents.get(uri);
    if (!open) return null;
    const { plan, study } = open.analysis;
    const findings = open.analysis.findings();
    const report = buildReport(study, findings, (f) => {
      const at = open.lines.at(f.place.start);
      return f.place.uri === uri ? `${at.line + 1}:${at.column + 1}` : '';
    });
    const due = study.calendar.dated
      ? study.calendar.entries.find((e) => e.painted === undefined)
      : undefined;
    return {
      title: report.title,
      version: open.version,
      body: bodyMarkup(report),
      style: STYLE,
      layers: plan.layers.map((l) => ({
        name: l.name,
        from: open.lines.at(l.place.start).line,
        to: open.lines.at(l.place.end).line,
      })),
      errors: findings.filter((f) => f.severity === 'error').length,
      warnings: findings.filter((f) => f.severity === 'warning').length,
      ...(due
        ? {
            next: {
              layer: due.layer,
              day: day(due.notBefore, true),
            },
          }
        : {}),
    };
  });
}
