/** The page of the figures: what it prints is what the code computes, and its sums come out. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FIGURES_PAGE, filled, planOf } from '../../language/build/figures-page.ts';
import { createAnalyser } from '../../language/src/index.ts';

const page = readFileSync(FIGURES_PAGE, 'utf8');
const other = (name: string) => readFileSync(new URL(`${name}.md`, FIGURES_PAGE), 'utf8');

test('language/docs/figures.md is current: else run node language/build/figures-page.ts', () => {
  expect(page).toBe(filled(page));
});

test('the plan it works through is sound', () => {
  const { plan, findings } = createAnalyser()(planOf(page), 'file:///example.paintplan');
  expect(plan.problems).toEqual([]);
  expect(findings().filter((f) => f.severity === 'error')).toEqual([]);
});

/** What a pocket calculator makes of a printed sum. */
function worth(sum: string): number {
  const js = sum
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replaceAll('−', '-')
    .replaceAll('^', '**')
    .replaceAll('√', 'Math.sqrt')
    .replaceAll(/\b(tanh|exp)\(/g, 'Math.$1(');
  expect(js, sum).toMatch(/^(?:[\d\s.()*/+-]|Math\.(?:sqrt|tanh|exp)\()+$/);
  return new Function(`return ${js}`)() as number;
}

const blocks = [...page.matchAll(/<!-- (\w+) -->\n```text\n([\s\S]*?)```/g)];
const sums = blocks.flatMap(([, name, text = '']) =>
  text
    .split('\n')
    .filter((line) => line.includes(' = '))
    .map((line) => {
      const [, label = '', words = ''] = /^(\S.*?) {2,}(.*)$/.exec(line) ?? [];
      const [left = '', right = ''] = words.replace(/^[^:]*: /, '').split(' = ');
      return [`${name}: ${label}`, left, right] as const;
    }),
);

describe('every printed sum comes out', () => {
  test('there are enough of them', () => expect(sums.length).toBeGreaterThan(35));

  test.each(sums)('%s', (_, left, right) => {
    const printed = Number.parseFloat(right);
    const made = worth(left);
    // operands are printed to three or four digits
    expect(Math.abs(made - printed), `${left} is ${made}`).toBeLessThan(0.011 * Math.abs(printed));
  });
});

const printed = (name: string, label: string): number[] => {
  const text = blocks.find(([, n]) => n === name)?.[2] ?? '';
  const line = text.split('\n').find((l) => l.startsWith(label)) ?? '';
  return [...line.slice(label.length).matchAll(/\d+(?:\.\d+)?/g)].map((m) => Number(m[0]));
};

describe('against the world outside', () => {
  // The differential equation itself, Kubelka & Munk, Z. techn. Physik 12 (1931) 593: dR/dX = S − 2(K+S)R + S·R².
  test('the film at 550 nm follows from integrating its equation', () => {
    const kx = printed('colour', 'K·X').at(-1)!;
    const sx = printed('colour', 'S·X').at(-1)!;
    let r = printed('colour', 'grey beneath')[0]!;
    const slope = (x: number) => sx - 2 * (kx + sx) * x + sx * x * x;
    const n = 2000;
    for (let i = 0; i < n; i++) {
      const a = slope(r);
      const b = slope(r + a / (2 * n));
      const c = slope(r + b / (2 * n));
      const d = slope(r + c / n);
      r += (a + 2 * b + 2 * c + d) / (6 * n);
    }
    expect(r).toBeCloseTo(printed('colour', 'R ').at(-1)!, 3);
  });

  // Fresnel at right angles for a refractive index of 1.5 is 0.2²; diffuse light inside 0.596 (Saunderson 1942).
  test('the surface is that of an index of 1.5', () => {
    expect(page).toContain('k1 is 0.040 and k2 is 0.596');
    expect(((1.5 - 1) / (1.5 + 1)) ** 2).toBeCloseTo(0.04, 10);
  });

  // The box: dC/dt = G/V − aC, integrated step by step.
  test('the air follows from integrating its equation', () => {
    const sealed = printed('air', 'sealed room').at(-1)!;
    const a = 2 / Math.sqrt(3);
    const n = 30_000;
    let c = 0;
    for (let i = 0; i < n; i++) c += (sealed / 3 - a * c) * (3 / n);
    const told = printed('air', 'at the end of the session').at(-1)!;
    expect(Math.abs(c / told - 1)).toBeLessThan(0.01);
  });
});

test('the table of what was reached agrees with the page of colour', () => {
  const reached = page.slice(page.indexOf('## What was reached'));
  const colour = other('colour');
  for (const figure of ['2.96', '2.34', '2.49', '1.97', '1.85', '6.58', '4.04', '16.93']) {
    expect(reached, figure).toContain(figure);
    expect(colour, figure).toContain(figure);
  }
});
