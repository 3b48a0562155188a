import type { Severity } from '../../plan/plan.ts';
import type { CheckedFile } from '../../report/checked.ts';
import { insteadWords, takeInstead } from '../../rules/shared/instead.ts';
import { oneLine, paint, printable, wrap } from '../paper.ts';
import { sumLine } from './sums.ts';

const INK: Record<Severity, (text: string) => string> = {
  error: (t) => paint.red(t),
  warning: (t) => paint.yellow(t),
  info: (t) => paint.cyan(t),
  hint: (t) => paint.gray(t),
};

/** Findings for reading in a terminal: place, severity and rule on one line, the message below it. */
export function textFormat(files: readonly CheckedFile[]): string {
  const out: string[] = [];
  for (const file of files) {
    if (file.findings.length === 0) continue;
    out.push(paint.bold(oneLine(file.path)));
    const said = new Set<string>();
    for (const f of file.findings) {
      const at = `${f.range.start.line}:${f.range.start.column}`;
      out.push(`  ${at.padEnd(7)} ${INK[f.severity](f.severity.padEnd(7))} ${paint.gray(f.rule)}`);
      const { instead = [] } = f;
      // several rules may object to one pigment: what to take instead is told once
      const others = insteadWords(instead);
      const line = `${f.range.start.line} ${others}`;
      out.push(wrap(printable(f.message + (said.has(line) ? '' : others)), 10));
      said.add(line);
      for (const r of f.related) {
        const where = r.path === file.path ? '' : `${r.path} `;
        out.push(
          paint.gray(
            wrap(oneLine(`see ${where}${r.range.start.line}:${r.range.start.column}  ${r.message}`), 12),
          ),
        );
      }
      const told = new Set(instead.map(takeInstead));
      const fixes = f.fixes.filter(({ title }) => !told.has(title));
      if (fixes.length > 0)
        out.push(paint.gray(wrap(oneLine(`the editor can: ${fixes.map((x) => x.title).join(' / ')}`), 12)));
    }
    if (file.fixesUntried)
      out.push(
        paint.gray(
          `  The file is long: fixes of ${file.fixesUntried} findings were not tried; the editor tries them where you stand.`,
        ),
      );
    out.push('');
  }
  out.push(sumLine(files));
  return `${out.join('\n')}\n`;
}
