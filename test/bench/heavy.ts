/** Texts nobody would write, but somebody will open: what a key costs in each, and how that grows when the text doubles. */
import { createAnalyser } from '../../language/src/analyse.ts';
import { ms, quantile, type Table, times, worked } from './table.ts';
import { HEAVY } from './texts.ts';

const ROUNDS = 7;

const figure = (text: string, i: number): string => {
  const at = text.lastIndexOf('film ', text.length / 2);
  return at < 0
    ? text.replace(/\d+(?= step)/, String(2 + i))
    : `${text.slice(0, at)}film ${2 + i}${text.slice(at).replace(/^film \d+/, '')}`;
};
const paint = (text: string, i: number): string => `${text}paint typed${i} = PB29 in linseed\n`;

/** The same stroke again and again; p50 of plan, study and every rule that needs no colour. */
export function keyIn(text: string, stroke: (text: string, i: number) => string): number {
  const analyse = createAnalyser();
  const uri = 'file:///heavy.paintplan';
  analyse(text, uri).findings({ colour: false });
  const taken = Array.from({ length: ROUNDS }, (_, i) => {
    const next = stroke(text, i);
    return worked(() => analyse(next, uri).findings({ colour: false }));
  });
  return quantile(taken, 0.5);
}

export function heavy(): Table {
  return {
    title: 'Heavy texts: after a keystroke, in one process',
    how: `Plan, study and every rule that needs no colour, time of the processor, p50 of ${ROUNDS}: a figure typed in the middle, or a paint at the end, which what follows may name; and how much longer the figure takes than in a text half as long (2 × is linear).`,
    head: ['text', 'half of it ÷', 'a figure', 'a paint', 'size'],
    rows: Object.entries(HEAVY).map(([name, { make, count }]) => {
      const text = make(count);
      const half = keyIn(make(count / 2), figure);
      const whole = keyIn(text, figure);
      return [
        name,
        times(whole / half),
        ms(whole),
        ms(keyIn(text, paint)),
        `${Math.round(text.length / 1000)} KB`,
      ];
    }),
  };
}
