import { createAnalyser } from '../../analyse.ts';
import { studyJson } from '../../study/json.ts';
import { checkedFile } from '../formats/checked.ts';
import { jsonText } from '../formats/json.ts';
import { elsewhere, hostFor } from '../host.ts';
import { CannotRun, readInputs } from '../input.ts';
import { studyPaper } from '../study-paper.ts';

export function studyCommand(name: string, options: { readonly format: string }): number {
  const inputs = readInputs([name]);
  const input = inputs[0];
  if (!input || inputs.length > 1) throw new CannotRun(`study takes one plan; ${name} holds ${inputs.length}.`);
  const { study, findings } = createAnalyser()(input.text, input.uri, hostFor(inputs));
  const checked = checkedFile(input, findings(), elsewhere);
  process.stdout.write(options.format === 'json' ? jsonText(studyJson(study, input.path, checked.findings)) : studyPaper(study, checked));
  return checked.findings.some((f) => f.severity === 'error') ? 1 : 0;
}
