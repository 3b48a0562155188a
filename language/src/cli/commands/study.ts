import { createAnalyser } from '../../analyse.ts';
import { buildReport, noticeOf } from '../../report/build.ts';
import { type CheckedFile, checkedFile } from '../../report/checked.ts';
import type { Finding } from '../../rules/rule.ts';
import { studyJson } from '../../study/json.ts';
import { jsonText } from '../formats/json.ts';
import { elsewhere, hostFor } from '../host.ts';
import { type Input, readInputs } from '../input.ts';
import { CannotRun } from '../say.ts';
import { studyPaper } from '../study-paper.ts';

/** One file, studied, with its findings placed. */
export function studied(input: Input) {
  const { study, findings } = createAnalyser()(input.text, input.uri, hostFor([input]));
  const checkedFindings = findings();
  const checked: CheckedFile = checkedFile(input, checkedFindings, elsewhere);
  const lines = new Map(checkedFindings.map((f, i) => [f, checked.findings[i]?.range.start]));
  const line = (f: Finding) => {
    const at = lines.get(f);
    return at ? `${at.line}:${at.column}` : '';
  };
  return {
    study,
    checked,
    report: () => buildReport(study, checkedFindings, line),
    notice: noticeOf(checkedFindings, line),
    failed: checkedFindings.some((f) => f.severity === 'error'),
  };
}

export function oneInput(name: string, command: string): Input {
  const inputs = readInputs([name]);
  const input = inputs[0];
  if (!input || inputs.length > 1)
    throw new CannotRun(`${command} takes one plan; ${name} holds ${inputs.length}.`);
  return input;
}

export function studyCommand(name: string, options: { readonly format: string }): number {
  const input = oneInput(name, 'study');
  const { study, checked, report, failed } = studied(input);
  process.stdout.write(
    options.format === 'json'
      ? jsonText(studyJson(study, input.path, checked.findings))
      : studyPaper(report(), checked),
  );
  return failed ? 1 : 0;
}
