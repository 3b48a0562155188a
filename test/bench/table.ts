/** What a bench found, as rows: printed in a terminal, or on the page of measurements. */

export interface Table {
  readonly title: string;
  /** one sentence on what was done */
  readonly how: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export function plain({ title, how, head, rows }: Table): string {
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => (r[i] ?? '').length)));
  const line = (cells: readonly string[]) =>
    `  ${cells.map((c, i) => (i === 0 ? c.padEnd(widths[i] as number) : c.padStart(widths[i] as number))).join('  ')}`;
  return [title, how, line(head), ...rows.map(line), ''].join('\n');
}

export const quantile = (values: readonly number[], q: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * q))] as number;

/** ms of the processor that some work takes, the collector's included: what else runs on the machine counts for little. */
export function worked(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

export const ms = (v: number): string => `${v < 1 ? v.toFixed(3) : v.toFixed(v < 10 ? 1 : 0)} ms`;
export const times = (v: number): string => `${v.toFixed(v < 10 ? 2 : 0)} ×`;
