/** The report of an open plan as a page's inside, with where its layers stand in the text. */
import type { Connection } from 'vscode-languageserver';
import { createAnalyser } from '../analyse.ts';
import { days } from '../features/figures.ts';
import { hexOf } from '../optics/css.ts';
import { buildReport } from '../report/build.ts';
import { BESIDE_TEXT } from '../report/extent.ts';
import { bodyMarkup } from '../report/html.ts';
import { escapeMarkup } from '../report/markup.ts';
import { sectionDrawing } from '../report/section.ts';
import { buildUpStrips } from '../report/strips.ts';
import { STYLE } from '../report/style.ts';
import type { Finding } from '../rules/rule.ts';
import type { Documents, Open } from './documents.ts';
import type { Publisher } from './publish.ts';

export interface Preview {
  readonly title: string;
  readonly version: number;
  readonly body: string;
  readonly style: string;
  /** first and last line of each layer that the body tells of, zero-based */
  readonly layers: readonly { readonly name: string; readonly from: number; readonly to: number }[];
}

export interface Status {
  readonly errors: number;
  readonly warnings: number;
  /** the day on which the next layer is likely due, where the plan has dates */
  readonly next?: { readonly layer: string; readonly day: string };
}

function statusOf({ analysis }: Open, findings: readonly Finding[]): Status {
  const { dated, entries } = analysis.study.calendar;
  const due = dated ? entries.find((e) => e.painted === undefined && !e.notKnown) : undefined;
  const count = (severity: Finding['severity']) => findings.filter((f) => f.severity === severity).length;
  return {
    errors: count('error'),
    warnings: count('warning'),
    ...(due ? { next: { layer: due.layer, day: days(due, true)[1] } } : {}),
  };
}

function previewOf(open: Open, findings: readonly Finding[]): Preview {
  const { plan, study } = open.analysis;
  const report = buildReport(
    study,
    findings,
    (f) => {
      const at = open.lines.at(f.place.start);
      return f.place.uri === open.uri ? `${at.line + 1}:${at.column + 1}` : '';
    },
    BESIDE_TEXT,
  );
  const body = bodyMarkup(report);
  const told = new Set(Array.from(body.matchAll(/ data-layer="([^"]*)"/g), ([, name]) => name));
  return {
    title: report.title,
    version: open.version,
    body,
    style: STYLE,
    layers: plan.layers
      .filter((l) => told.has(escapeMarkup(l.name)))
      .map((l) => ({
        name: l.name,
        from: open.lines.at(l.place.start).line,
        to: open.lines.at(l.place.end).line,
      })),
  };
}

/** SVG of a fenced plan's section and build-up for a Markdown preview; '' where it has no layers to draw. */
function drawer(): (text: string) => string {
  const analyse = createAnalyser();
  let drawn = 0;
  return (text) => {
    const { study } = analyse(text, 'file:///note.paintplan');
    const id = `paintplan-${++drawn}`;
    return [
      sectionDrawing(study, `${id}-section`, undefined, BESIDE_TEXT),
      buildUpStrips(study, hexOf, `${id}-strips`, BESIDE_TEXT),
    ]
      .map((d) => d?.markup ?? '')
      .join('');
  };
}

/** Previews wait for the keyboard to rest, and take the findings that the diagnostics were made of. */
export function answerPreviews(connection: Connection, documents: Documents, publish: Publisher): void {
  const rested =
    <R>(answer: (open: Open, findings: readonly Finding[]) => R) =>
    async ({ uri }: { uri: string }): Promise<R | null> => {
      await publish.rested(uri);
      const open = documents.get(uri);
      return open ? answer(open, publish.coloured(open)) : null;
    };
  connection.onRequest('paintplan/preview', rested(previewOf));
  connection.onRequest('paintplan/status', rested(statusOf));
  const drawing = drawer();
  connection.onRequest('paintplan/drawing', ({ text }: { text: string }) => drawing(text));
}
