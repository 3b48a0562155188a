import { createAnalyser } from '../../analyse.ts';
import { compare, comparisonReport, isSame } from '../../report/compare.ts';
import { markdownReport } from '../../report/markdown.ts';
import { jsonText, tool } from '../formats/json.ts';
import { hostFor } from '../host.ts';
import { reportPaper } from '../study-paper.ts';
import { oneInput } from './study.ts';

/** Exit 0 where both say the same, 1 where they differ. */
export function compareCommand(before: string, after: string, options: { readonly format: string }): number {
  const versions = [before, after].map((name) => {
    const input = oneInput(name, 'compare');
    const { study, findings } = createAnalyser()(input.text, input.uri, hostFor([input]));
    return { path: input.path, study, findings: findings() };
  });
  const [old, now] = versions as [(typeof versions)[0], (typeof versions)[0]];
  const result = compare(old, now);
  const report = () => comparisonReport(result, `${old.path} → ${now.path}`);
  if (options.format === 'json')
    process.stdout.write(
      jsonText({ version: '1', tool, old: old.path, new: now.path, same: isSame(result), ...result }),
    );
  else
    process.stdout.write(
      options.format === 'md' ? markdownReport(report(), 'compare').text : reportPaper(report()),
    );
  return isSame(result) ? 0 : 1;
}
