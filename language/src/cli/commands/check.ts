import { createAnalyser } from '../../analyse.ts';
import type { Severity } from '../../plan/plan.ts';
import { type CheckedFile, checkedFile, checkJson } from '../../report/checked.ts';
import { MOST_TRIED } from '../../rules/trial.ts';
import { githubFormat } from '../formats/github.ts';
import { jsonText } from '../formats/json.ts';
import { sarifLog } from '../formats/sarif.ts';
import { counted } from '../formats/sums.ts';
import { textFormat } from '../formats/text.ts';
import { elsewhere, hostFor } from '../host.ts';
import { readEach } from '../input.ts';
import { progress } from '../progress.ts';

interface Options {
  readonly format: string;
  readonly rule: Record<string, Severity | 'off'>;
  readonly maxWarnings?: number;
}

const FORMATS: Record<string, (files: readonly CheckedFile[]) => string> = {
  text: textFormat,
  json: (files) => jsonText(checkJson(files)),
  github: githubFormat,
  sarif: (files) => jsonText(sarifLog(files)),
};

/** Several plans of one note are one file to the reader. */
function merged(files: readonly CheckedFile[]): CheckedFile[] {
  const byPath = new Map<string, CheckedFile>();
  for (const file of files) {
    const before = byPath.get(file.path);
    const untried = (before?.fixesUntried ?? 0) + (file.fixesUntried ?? 0);
    byPath.set(
      file.path,
      before
        ? {
            ...before,
            findings: [...before.findings, ...file.findings],
            ...(untried > 0 ? { fixesUntried: untried } : {}),
          }
        : file,
    );
  }
  return [...byPath.values()];
}

export function check(names: readonly string[], options: Options): number {
  const { inputs, all } = readEach(names);
  if (inputs.length === 0 && !all) return 2;
  const host = hostFor(inputs);
  const shown = progress('Checking', inputs.length);
  const analyse = createAnalyser();
  const checked = inputs.map((input) => {
    shown.next(input.path);
    const { findings } = analyse(input.text, input.uri, host);
    const patience = { left: MOST_TRIED, untried: 0 };
    return checkedFile(input, findings({ severities: options.rule, patience }), elsewhere, patience);
  });
  shown.done();
  const files = merged(checked);
  process.stdout.write((FORMATS[options.format] as (f: readonly CheckedFile[]) => string)(files));
  if (!all) return 2;
  const count = counted(files);
  return count.error > 0 || (options.maxWarnings !== undefined && count.warning > options.maxWarnings)
    ? 1
    : 0;
}
