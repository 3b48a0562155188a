/** How many findings of each severity, and the line that sums them up. */
import type { Severity } from '../../plan/plan.ts';
import type { CheckedFile } from '../../report/checked.ts';

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

/** `2 errors, 1 warning`: what a report of the file must not be read without. */
export function graveLine(file: CheckedFile): string {
  const { error, warning } = counted([file]);
  const words = (n: number, what: string) => `${n} ${what}${n === 1 ? '' : 's'}`;
  return `${words(error, 'error')}, ${words(warning, 'warning')}`;
}
