/** What the command line says of the same text: the editor must agree with it to the letter. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const COMMAND = fileURLToPath(new URL('../../language/bin/paintplan.js', import.meta.url));

/** Standard output; exit 1 only means that there are findings. */
export function paintplan(folder: string, ...args: string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  if (status !== 0 && status !== 1) throw new Error(`paintplan ${args.join(' ')}: ${stderr}`);
  return stdout;
}

interface Finding {
  readonly rule: string;
  readonly severity: 'error' | 'warning' | 'info' | 'hint';
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly column: number } };
}

export function findings(folder: string, file: string): readonly Finding[] {
  const { files } = JSON.parse(paintplan(folder, 'check', file, '--format', 'json')) as {
    files: { path: string; findings: Finding[] }[];
  };
  return files.filter((f) => f.path.endsWith(file)).flatMap((f) => f.findings);
}

/** Findings as the Problems panel lists them: hints are drawn in the text only. Sorted, since the panel sorts its own way. */
export const listed = (folder: string, file: string): string[] =>
  findings(folder, file)
    .filter((f) => f.severity !== 'hint')
    .map(
      (f) => `${f.range.start.line}:${f.range.start.column} ${f.severity} paintplan(${f.rule}): ${f.message}`,
    )
    .sort();
