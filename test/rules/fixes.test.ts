/** Every fix keeps its promise, on random plans sound and slipped: it takes its finding away, and adds no warning or error. */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { randomPlan } from '../fuzz/plans.ts';
import { edits } from '../fuzz/text.ts';
import { tries } from '../long.ts';
import { applied, comments } from './harness.ts';

const uri = 'file:///random.paintplan';
const judged = (text: string) => createAnalyser()(text, uri).findings();
type Found = ReturnType<typeof judged>;

function graves(found: Found): Map<string, number> {
  const counted = new Map<string, number>();
  for (const { rule, severity } of found)
    if (severity === 'error' || severity === 'warning')
      counted.set(`${severity} ${rule}`, (counted.get(`${severity} ${rule}`) ?? 0) + 1);
  return counted;
}

const told = (found: Found, rule: string) => found.filter((f) => f.rule === rule).length;

/** How many fixes a text was offered; every one is put in and the text judged afresh. */
function tried(text: string): number {
  const before = judged(text);
  const known = graves(before);
  let count = 0;
  for (const finding of before)
    for (const fix of finding.fixes) {
      count++;
      const after = applied(text, fix, uri);
      const what = `‘${fix.title}’ for: ${finding.message}\nin\n${text}`;
      expect(after, what).not.toBe(text);
      const found = judged(after);
      expect(told(found, finding.rule), what).toBeLessThan(told(before, finding.rule));
      for (const [grave, n] of graves(found))
        expect(n, `${what}\nadds ${grave}`).toBeLessThanOrEqual(known.get(grave) ?? 0);
    }
  return count;
}

const seeds = Array.from({ length: tries(20, 2000) }, (_, i) => i + 1);

test('random plans and records', () => {
  expect(seeds.reduce((sum, seed) => sum + tried(randomPlan(seed)), 0)).toBeGreaterThan(seeds.length);
});

test('the same with slips of the keyboard in them', () => {
  const slipped = (seed: number) => [...edits(randomPlan(seed), seed, 3)].at(-1) as string;
  expect(seeds.reduce((sum, seed) => sum + tried(slipped(seed)), 0)).toBeGreaterThan(seeds.length);
});

describe('fixes that are right in themselves', () => {
  const fixOf = (text: string, rule: string, title: RegExp): string => {
    const finding = judged(text).find((f) => f.rule === rule && f.fixes.some((x) => title.test(x.title)));
    const fix = finding?.fixes.find((x) => title.test(x.title));
    if (!fix) throw new Error(`no fix ${title} of ${rule} in\n${text}`);
    return applied(text, fix, uri);
  };

  test('a ground is put below a drawing, everywhere, and takes no description from what it is put before', () => {
    const text = `plan "x"
support oak-panel 40 x 50 cm
area sky 50 %
area land 50 %
/// first thoughts
drawing lines { on land  material charcoal }
layer body { on sky  colour PB29 }
`;
    const after = fixOf(text, 'support-ground-mismatch', /acrylic ground/);
    expect(after.indexOf('ground priming')).toBeLessThan(after.indexOf('/// first'));
    expect(after).not.toContain('on sky, ');
    expect(comments(after)).toEqual(comments(text));
  });

  test('rubbing is left out beside an oiling out', () => {
    const text = `plan "x"
ground g { material acrylic }
layer a { colour PW1  film 30 µm }
layer b { prepare abrade  prepare oil-out with walnut  colour PB29 }
`;
    expect(fixOf(text, 'abrade-toxic-layer', /Leave it out/)).toContain(
      '{ prepare oil-out with walnut  colour',
    );
  });

  test('a film is widened to hold every sample of its layer', () => {
    const text = `record "x"
layer a { colour PB29  film 10..12 µm }
sample S1 { a 13.46 µm }
sample S2 { a 4.14 µm }
`;
    expect(fixOf(text, 'sample-thickness-outside', /Write film/)).toContain('film 4.1..13.5 µm');
  });

  test('no fix of a syntax fault leaves the line unread', () => {
    expect(judged('plan "x"\nlayer a { colour 2 PB29 1 PW6 1 PY43 }\n').flatMap((f) => f.fixes)).toEqual([]);
    expect(fixOf('plan "x"\nlayer a { colour 2 PB29 1 PW6 }\n', 'syntax', /Add \+/)).toContain(
      'PB29 + 1 PW6',
    );
  });

  test('a long list of fixes ends, and says how many were not tried', () => {
    const patience = { left: 1, untried: 0 };
    const text = 'plan "x"\nlayer a { film 8-12 µm }\nlayer b { film 8-12 µm }\n';
    const found = createAnalyser()(text, uri).findings({ patience });
    expect(found.filter((f) => f.fixes.length > 0)).toHaveLength(1);
    expect(patience.untried).toBeGreaterThan(0);
  });
});
