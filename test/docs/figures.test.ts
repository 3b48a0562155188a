/** The page of the figures: what it prints is what the code computes, and its sums come out. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { filled as colourFilled } from '../../language/build/colour-page.ts';
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
    .replaceAll('e^(', 'exp(')
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
  // A film that only absorbs, over an even ground, by quadrature over every direction (Fresnel at the face, n = 1.5).
  test('the clear film at 550 nm follows from adding up its directions', () => {
    const tau = printed('colour', 'a·X').at(-1)! + printed('colour', 's·X').at(-1)!;
    const ground = printed('colour', 'grey beneath')[0]!;
    const face = (mu: number): number => {
      const sine = 1.5 * Math.sqrt(1 - mu * mu);
      if (sine >= 1) return 1;
      const out = Math.sqrt(1 - sine * sine);
      return (((1.5 * mu - out) / (1.5 * mu + out)) ** 2 + ((1.5 * out - mu) / (1.5 * out + mu)) ** 2) / 2;
    };
    const over = (f: (mu: number) => number): number => {
      const n = 20_000;
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (2 * ((i + 0.5) / n) * f((i + 0.5) / n)) / n;
      return sum;
    };
    const straight = Math.sqrt(1 - (Math.sin((8 * Math.PI) / 180) / 1.5) ** 2);
    const leaves = over((mu) => (1 - face(mu)) * Math.exp(-tau / mu));
    const again = over((mu) => face(mu) * Math.exp((-2 * tau) / mu));
    const seen = ((1 - face(straight)) * Math.exp(-tau / straight) * ground * leaves) / (1 - ground * again);
    expect(Math.abs(seen - printed('colour', 'seen, were it clear').at(-1)!)).toBeLessThan(0.003);
  });

  // Fresnel at right angles for a refractive index of 1.5 is 0.2²; diffuse light inside 0.596 (Saunderson 1942).
  test('the surface is that of an index of 1.5', () => {
    expect(page).toContain('k1 is 0.040');
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

test('language/docs/colour.md is current: else run node language/build/colour-page.ts', () => {
  expect(other('colour')).toBe(colourFilled(other('colour')));
});
