/** A report as Markdown (GitHub's tables) with its drawings as SVG files beside it. */
import { legible } from '../plan/legible.ts';
import type { Block, Cell, Report } from './document.ts';

/** Words of a plan in Markdown: nothing in them may start markup, nor, at the beginning of a line, a block. */
export const plainMarkdown = (text: string): string =>
  legible(text.replace(/\r\n|\n|\r/g, ' '))
    .trim()
    .replace(/[\\`*_[\]|#~$]/g, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    // a list, a rule, a line below a heading, a command to a service that prints the report
    .replace(/^(?:[-+=](?=[\s=-]|$)|::)/, '\\$&')
    .replace(/^(\d{1,9})([.)])(?=\s|$)/, '$1\\$2');

/** The address of a file beside the report, whatever it is called. */
const address = (name: string): string =>
  encodeURIComponent(name).replace(/[!'()*]/g, (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`);

const cell = (c: string | Cell): string => plainMarkdown(typeof c === 'string' ? c : c.text);
const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function blockMarkdown(block: Block, drawing: (name: string) => string): string {
  switch (block.kind) {
    case 'words':
      return block.quiet ? `*${plainMarkdown(block.text)}*` : plainMarkdown(block.text);
    case 'list':
      return block.items.map((i) => `- ${plainMarkdown(i)}`).join('\n');
    case 'drawing':
      return `![${plainMarkdown(block.alternative)}](${drawing(block.name)})`;
    case 'table':
      return [
        ...(block.caption ? [`**${plainMarkdown(block.caption)}**`, ''] : []),
        row(block.head.map(plainMarkdown)),
        row(block.head.map(() => '---')),
        ...block.rows.map((r) => row(r.map(cell))),
      ].join('\n');
  }
}

/** A report as Markdown, with its drawings. */
export interface MarkdownReport {
  readonly text: string;
  /** SVG files by name, to be written beside it */
  readonly drawings: ReadonlyMap<string, string>;
}

/** `prefix` goes before the names of the drawings: the plan's own name, so that reports in one folder keep apart. */
export function markdownReport(report: Report, prefix: string): MarkdownReport {
  const drawings = new Map<string, string>();
  const parts = report.parts.map((p) => {
    const blocks = p.blocks.map((b) => {
      if (b.kind === 'drawing') drawings.set(`${prefix}-${b.name}.svg`, `${b.drawing.markup}\n`);
      return blockMarkdown(b, (name) => address(`${prefix}-${name}.svg`));
    });
    return `## ${plainMarkdown(p.title)}\n\n${blocks.filter(Boolean).join('\n\n')}`;
  });
  return {
    text: `# ${plainMarkdown(report.title)}\n\n${plainMarkdown(report.subtitle)}\n\n${report.notice ? `**${plainMarkdown(report.notice)}**\n\n` : ''}${parts.join('\n\n')}\n`,
    drawings,
  };
}

/** One part of a report, or one of its drawings, as Markdown; undefined where the report has neither of that name. */
export function markdownPart(report: Report, what: string, prefix: string): MarkdownReport | undefined {
  const blocks =
    report.parts.find((p) => p.id === what)?.blocks ??
    report.parts.flatMap((p) => p.blocks).filter((b) => b.kind === 'drawing' && b.name === what);
  if (blocks.length === 0) return undefined;
  const drawings = new Map<string, string>();
  const text = blocks.map((b) => {
    if (b.kind === 'drawing') drawings.set(`${prefix}-${b.name}.svg`, `${b.drawing.markup}\n`);
    return blockMarkdown(b, (name) => address(`${prefix}-${name}.svg`));
  });
  return { text: text.filter(Boolean).join('\n\n'), drawings };
}
