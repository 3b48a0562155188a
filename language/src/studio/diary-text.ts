/** The diary for a terminal or a printed sheet: plain lines, one block a sitting. */
import { deferringLine } from '../materials/cautions.ts';
import type { Study } from '../results/study.ts';
import { diary } from './diary.ts';
import { clocksWords, dayWords } from './words.ts';

export function diaryText(study: Study): string {
  const { dated } = study.calendar;
  const blocks = diary(study).map((e) => {
    const when = e.painted !== undefined ? `painted ${dayWords(e.painted, dated)}` : clocksWords(e, dated);
    const coat = e.coats > 1 ? `, coat ${e.coat} of ${e.coats}` : '';
    return [
      `${e.sitting}. ${e.layer}${coat}: ${when}`,
      ...e.steps.map((s) => `   ${s}`),
      ...(e.cautions.length > 0 ? [`   Mind: ${e.cautions.join('; ')}.`] : []),
    ].join('\n');
  });
  return blocks.length === 0 ? '' : `${[...blocks, deferringLine.text].join('\n\n')}\n`;
}
