/** Writing for a terminal: colour only where it is one (and NO_COLOR is not set), lines that fit. */
import picocolors from 'picocolors';
import { legible } from '../plan/legible.ts';

/** Decided per call, not at load: tests and pipes change what standard output is. */
export const onTerminal = (): boolean => process.stdout.isTTY === true && !process.env.NO_COLOR;

const ink = (name: 'bold' | 'red' | 'yellow' | 'green' | 'cyan' | 'gray') => (text: string) =>
  onTerminal() ? picocolors.createColors(true)[name](text) : text;

export const paint = {
  bold: ink('bold'),
  red: ink('red'),
  yellow: ink('yellow'),
  green: ink('green'),
  cyan: ink('cyan'),
  gray: ink('gray'),
};

/**
 * Words of a plan or a file's name, which may hold anything: nothing steers the terminal, and nothing is a command to a
 * service that reads what a pipeline prints (those begin `::` or `##[`).
 */
export const printable = (text: string): string =>
  legible(text).replaceAll('::', ': :').replaceAll('##[', '## [');

/** The same on one line. */
export const oneLine = (text: string): string => printable(text).replace(/[\n\t]/g, '\ufffd');

/** A small block of colour, where the terminal can show one. */
export function swatch(hex: string, width = 2): string {
  if (!onTerminal()) return '';
  const [r, g, b] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));
  return `\u001b[48;2;${r};${g};${b}m${' '.repeat(width)}\u001b[0m `;
}

const columns = () => Math.min(Math.max(process.stdout.columns ?? 100, 60), 120);

/** Folds a text at spaces to the terminal's width, every line indented. */
export function wrap(text: string, indent = 0): string {
  const room = columns() - indent;
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(' ')) {
      if (line && line.length + 1 + word.length > room) {
        lines.push(line);
        line = word;
      } else line = line ? `${line} ${word}` : word;
    }
    lines.push(line);
  }
  return lines.map((l) => ' '.repeat(indent) + l).join('\n');
}

/** A table with aligned columns; numbers may be right-aligned by naming their column. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], indent = 2): string {
  const plain = (text: string) => text.replace(/\u001b\[[0-9;]*m/g, '');
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => plain(r[i] ?? '').length)));
  const line = (cells: readonly string[]) =>
    (
      ' '.repeat(indent) +
      cells.map((c, i) => c + ' '.repeat(Math.max(0, (widths[i] ?? 0) - plain(c).length))).join('  ')
    ).trimEnd();
  return [paint.gray(line(head)), ...rows.map(line)].join('\n');
}
