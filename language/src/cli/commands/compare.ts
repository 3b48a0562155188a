import { createAnalyser } from '../../analyse.ts';
import { compare, comparisonReport, isSame } from '../../report/compare.ts';
import { compareJson } from '../../report/compare-json.ts';
import { markdownReport } from '../../report/markdown.ts';
import { jsonText } from '../formats/json.ts';
import { hostFor } from '../host.ts';
import type { Input } from '../input.ts';
import { reportPaper } from '../study-paper.ts';
import { oneInput } from './study.ts';

/** Exit 0 where both say the same, 1 where they differ. */
export function compareCommand(before: string, after: string, options: { readonly format: string }): number {
  const [first, second] = [oneInput(before, 'compare'), oneInput(after, 'compare')];
  const host = hostFor([first, second]);
  const read = (input: Input, uri: string) => {
    const { plan, study, findings } = createAnalyser()(input.text, uri, host);
    return { path: input.path, plan, study, findings: findings() };
  };
  const now = read(second, second.uri);
  let old = read(first, first.uri);
  // an old version taken out of a repository lies apart from the palettes it uses; they are read beside the new one
  if (old.plan.uses.some((u) => u.status !== 'read')) old = read(first, second.uri);
  const result = compare(old, now);
  const report = () => comparisonReport(result, `${old.path} → ${now.path}`);
  if (options.format === 'json') process.stdout.write(jsonText(compareJson(old.path, now.path, result)));
  else
    process.stdout.write(
      options.format === 'md' ? markdownReport(report(), 'compare').text : reportPaper(report()),
    );
  return isSame(result) ? 0 : 1;
}
