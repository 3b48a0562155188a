/** The whole study as it is read in a terminal: the report's parts, the findings in their own form, no drawings. */

import type { CheckedFile } from '../report/checked.ts';
import type { Block, Report } from '../report/document.ts';
import { textFormat } from './formats/text.ts';
import { oneLine, paint, printable, swatch, table, wrap } from './paper.ts';

/** A column this wide is folded into lines below its row instead of stretching the table. */
const WIDEST = 60;

function blockPaper(block: Block): string | undefined {
  switch (block.kind) {
    case 'words':
      return wrap(printable(block.text), 2);
    case 'list':
      return block.items.map((i) => wrap(printable(i), 4).replace(/^ {4}/, '  - ')).join('\n');
    case 'drawing':
      return undefined;
    case 'table': {
      const cells = block.rows.map((r) =>
        r.map((c) =>
          typeof c === 'string' ? printable(c) : `${c.swatch ? swatch(c.swatch, 3) : ''}${printable(c.text)}`,
        ),
      );
      const long = block.head.map((_, i) => cells.some((r) => (r[i] ?? '').length > WIDEST));
      const short = <T>(row: readonly T[]) => row.filter((_, i) => !long[i]);
      const lines = table(short(block.head), cells.map(short)).split('\n');
      const body = lines
        .slice(1)
        .flatMap((line, i) => [
          line,
          ...block.head.flatMap((_, j) =>
            long[j] && cells[i]?.[j] ? [wrap(cells[i]?.[j] as string, 6)] : [],
          ),
        ]);
      return [
        ...(block.caption ? [`  ${paint.bold(printable(block.caption))}`] : []),
        lines[0],
        ...body,
      ].join('\n');
    }
  }
}

/** Any report in the terminal; `own` replaces a part's text by one made for the terminal. */
export function reportPaper(report: Report, own: Readonly<Record<string, string>> = {}): string {
  const parts = report.parts.flatMap((p) => {
    const text =
      own[p.id] ??
      p.blocks
        .map(blockPaper)
        .filter((t) => t !== undefined)
        .join('\n');
    return text ? [`${paint.bold(p.title)}\n${text}`] : [];
  });
  const notice = report.notice ? `\n${wrap(oneLine(report.notice))}` : '';
  return `${[`${paint.bold(oneLine(report.title))}\n${oneLine(report.subtitle)}${notice}`, ...parts].join('\n\n')}\n`;
}

export const studyPaper = (report: Report, checked: CheckedFile): string =>
  reportPaper(report, { findings: textFormat([checked]).trimEnd() });
