/** Texts nobody would write, but somebody will open: what a key costs in each, and how that grows when the text doubles. */
import { createAnalyser } from '../../language/src/analyse.ts';
import { ms, quantile, type Table, times } from './table.ts';
import { HEAVY } from './texts.ts';

const ROUNDS = 5;

/** A figure typed near the end, again and again; p50 of plan, study and every rule that needs no colour. */
export function keyIn(text: string, rounds = ROUNDS): number {
  const analyse = createAnalyser();
  const uri = 'file:///heavy.paintplan';
  analyse(text, uri).findings({ colour: false });
  const taken = Array.from({ length: rounds }, (_, i) => {
    const next = `${text}paint typed${i} = PB29 in linseed\n`;
    const start = performance.now();
    analyse(next, uri).findings({ colour: false });
    return performance.now() - start;
  });
  return quantile(taken, 0.5);
}

export function heavy(): Table {
  return {
    title: 'Heavy texts: after a keystroke, in one process',
    how: `Plan, study and every rule that needs no colour, p50 of ${ROUNDS}; and how much longer it takes than in a text half as long (2 × is linear).`,
    head: ['text', 'half of it ÷', 'after a keystroke', 'size'],
    rows: Object.entries(HEAVY).map(([name, { make, count }]) => {
      const text = make(count);
      const half = keyIn(make(count / 2));
      const whole = keyIn(text);
      return [name, times(whole / half), ms(whole), `${Math.round(text.length / 1000)} KB`];
    }),
  };
}
