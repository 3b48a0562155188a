import { legible } from '../../plan/legible.ts';
import type { CheckedFile } from '../../report/checked.ts';

const COMMAND = { error: 'error', warning: 'warning', info: 'notice', hint: 'notice' } as const;

const data = (text: string) =>
  legible(text).replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const property = (text: string) => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');

/** GitHub Actions workflow commands, one a finding. */
export function githubFormat(files: readonly CheckedFile[]): string {
  return files
    .flatMap((file) =>
      file.findings.map((f) => {
        const { start, end } = f.range;
        // the service rejects columns on a range over several lines
        const columns = start.line === end.line ? `,col=${start.column},endColumn=${end.column}` : '';
        const where = `file=${property(file.path)},line=${start.line},endLine=${end.line}${columns}`;
        return `::${COMMAND[f.severity]} ${where},title=${property(f.rule)}::${data(f.message)}\n`;
      }),
    )
    .join('');
}
