/** Any text: no crash, no hang, places inside the text, a message where something is wrong. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../language/src/plan/plan.ts';
import { createPlanMemo, readPlan } from '../../language/src/plan/read.ts';
import { edits } from '../fuzz/text.ts';
import { tries } from '../long.ts';
import { samples, samplesHost } from '../plan/samples.ts';

const uri = 'file:///hostile.paintplan';

function sound(plan: Plan, text: string): void {
  for (const p of plan.problems) {
    expect(p.place.start, p.message).toBeGreaterThanOrEqual(0);
    expect(p.place.end, p.message).toBeGreaterThanOrEqual(p.place.start);
    expect(p.place.end, p.message).toBeLessThanOrEqual(text.length);
    expect(p.message).not.toMatch(/undefined|NaN|Infinity|\[object|token|Expecting|EOF/);
    for (const fix of p.fixes ?? [])
      for (const e of fix.edits) expect(e.place.end).toBeLessThanOrEqual(text.length);
  }
  const odd = JSON.stringify(
    [
      plan.studio,
      plan.support,
      plan.areas,
      plan.paints.map((p) => [p.oil, p.formula?.parts.map((x) => x.amount)]),
      plan.layers.map((l) => [l.film, l.coats, l.wait, l.after, l.medium?.share]),
    ],
    (_, v) => (typeof v === 'number' && !Number.isFinite(v) ? 'NOT A NUMBER' : v),
  );
  expect(odd).not.toContain('NOT A NUMBER');
}

describe('random edits', () => {
  const times = tries(15, 500);
  test.each(samples.map((s, i) => [s.name, s.text, i] as const))(`%s, ${times} times`, (_, text, seed) => {
    const memo = createPlanMemo();
    for (const edited of edits(text, seed + 1, times))
      sound(readPlan(edited, uri, samplesHost, memo), edited);
  });

  test('a memory of the last text changes nothing but time', () => {
    for (const { text } of samples.slice(0, 4)) {
      const memo = createPlanMemo();
      for (const edited of edits(text, 7, 60))
        expect(JSON.stringify(readPlan(edited, uri, samplesHost, memo).problems)).toBe(
          JSON.stringify(readPlan(edited, uri, samplesHost).problems),
        );
    }
  });

  test('arbitrary strings', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => sound(readPlan(text, uri), text)),
      { numRuns: 500, seed: 3 },
    );
  });
});

describe('missing braces', () => {
  test('by the hundred', () => {
    const text = Array.from({ length: 400 }, (_, i) => `glaze g${i} {\n  film 8 µm\n`).join('\n');
    const plan = readPlan(text, uri);
    expect(plan.layers).toHaveLength(400);
    expect(plan.layers.every((l) => l.film?.value.likely === 8)).toBe(true);
    expect(plan.problems).toHaveLength(400);
  });

  test('none that opens', () => {
    const text = Array.from({ length: 300 }, (_, i) => `glaze g${i}\n  film 8 µm\n}\n`).join('\n');
    const plan = readPlan(text, uri);
    expect(plan.layers.map((l) => l.film?.value.likely)).toEqual(Array.from({ length: 300 }, () => 8));
    expect(plan.problems).toHaveLength(300);
  });

  test('nested a thousand deep', () => {
    const plan = readPlan(`glaze deep ${'{'.repeat(1000)} film 8 µm ${'}'.repeat(1000)}\narea sky 50 %`, uri);
    expect(plan.areas[0]?.name).toBe('sky');
    expect(plan.problems.length).toBeLessThanOrEqual(3);
  });
});

describe('line ends, marks and odd characters', () => {
  const plain = readPlan(samples[0]?.text ?? '', uri, samplesHost);
  test.each([
    ['CRLF', (t: string) => t.replaceAll('\n', '\r\n')],
    ['CR', (t: string) => t.replaceAll('\n', '\r')],
    ['a byte-order mark', (t: string) => `\ufeff${t}`],
  ])('%s', (_, change) => {
    for (const { text } of samples) {
      const [a, b] = [readPlan(text, uri, samplesHost), readPlan(change(text), uri, samplesHost)];
      expect(b.problems).toEqual([]);
      expect(b.layers.map((l) => [l.name, l.film?.words, l.fields.map((f) => f.name)])).toEqual(
        a.layers.map((l) => [l.name, l.film?.words, l.fields.map((f) => f.name)]),
      );
      expect(b.paints.map((p) => p.description)).toEqual(a.paints.map((p) => p.description));
    }
    expect(plain.problems).toEqual([]);
  });

  test('emoji in texts are kept, elsewhere reported at their place', () => {
    const good = readPlan('note "🎨 wet"', uri);
    expect([good.notes, good.problems]).toEqual([['🎨 wet'], []]);
    const text = 'glaze warm {\n  film 🎨 8 µm\n  coats 2\n}';
    const plan = readPlan(text, uri);
    expect(plan.layers[0]?.coats?.value.likely).toBe(2);
    expect(plan.problems).toHaveLength(1);
    expect(text.slice(plan.problems[0]?.place.start).startsWith('🎨')).toBe(true);
  });

  test.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
    '%s is a name like any other',
    (n) => {
      const plan = readPlan(
        `plan "x"\narea ${n} 50 %\npaint ${n} = PB29 in linseed\nglaze first { on ${n}   colour ${n}   film 8 µm }\nmedium thin-one = ${n} + linseed\nglaze second { on ${n}x   colour ${n}y   prepare wipe with ${n}   material ${n}   resin ${n} }`,
        uri,
      );
      expect(plan.layers[0]?.on[0]).toMatchObject({ name: n, known: true, areas: [n] });
      expect(plan.layers[0]?.colour).toMatchObject({
        kind: 'formula',
        formula: { parts: [{ ingredient: { is: { kind: 'paint' } } }] },
      });
      expect(plan.mediums[0]?.formula?.parts[0]?.ingredient.is.kind).toBe('misplaced');
      expect(plan.layers[1]?.on[0]?.known).toBe(false);
      expect(plan.layers[1]?.material?.is).toBeUndefined();
      expect(plan.layers[1]?.resin?.is).toBeUndefined();
      expect(plan.layers[1]?.prepare[0]?.agent?.is).toBeUndefined();
      const none = readPlan(
        `plan "x"\nglaze a { film ${n} }\nstudio { light-source ${n} }\nallow ${n} because "x"\npigment p like ${n} { lightfast ${n}   hazard ${n} }`,
        uri,
      );
      expect(none.layers[0]?.film).toBeUndefined();
      expect(none.problems.length).toBeGreaterThanOrEqual(3);
    },
  );
});

describe('a megabyte', () => {
  const MB = 1 << 20;
  const many = (piece: string) => piece.repeat(Math.ceil(MB / piece.length)).slice(0, MB);
  const seq = (each: (i: number) => string) => {
    let text = '';
    for (let i = 0; text.length < MB; i++) text += each(i);
    return text;
  };
  const shapes: Record<string, string> = {
    '{': many('{'),
    '}': many('}'),
    '"': many('"'),
    '/*': many('/*'),
    '/* on each line': many('/*\n'),
    NUL: many('\0'),
    spaces: many(' '),
    'line ends': many('\n'),
    words: many('garbage words here\n'),
    digits: many('1'),
    hyphens: many('a-'),
    'lab(': many('lab('),
    emoji: many('🎨'),
    'blocks without end': many('glaze a {\n'),
    'braces in a block': `glaze a ${many('{')}`,
    'commas in a list': `group a = ${many('b,')}`,
    'plus in a formula': `mix a = ${many('1 b + ')}`,
    'one block of fields': `glaze a {\n${many('on x\n')}}`,
    'one block of strangers': `glaze a {\n${many('foo bar\n')}}`,
    'broken declarations': seq((i) => `area ,${i}\n`),
    'unknown names': seq((i) => `area a${i} 1 %\nglaze g${i} {\n  on b${i}\n}\n`),
    'names without end': seq((i) => `mix m${i} = m${i + 1} + PB29\n`),
    descriptions: many('/// x\n'),
    'open quotes': many('note "\n'),
    'same name': many('paint a = PB29 in linseed\n'),
  };
  test.each(Object.entries(shapes))('of %s', (_, text) => {
    const started = performance.now();
    const plan = readPlan(text, uri);
    // a hang guard, not a benchmark: the slowest takes about two seconds on a slow machine
    expect(performance.now() - started).toBeLessThan(30_000);
    expect(plan.problems.length).toBeLessThanOrEqual(1001);
    sound(plan.problems.length > 50 ? { ...plan, problems: plan.problems.slice(0, 50) } : plan, text);
  });

  test('of a real plan is read whole', () => {
    const text = `plan "Long"\narea sky 50 %\npaint blue = PB29 in linseed\n${seq((i) => `glaze g${i} {\n  on sky\n  colour ${i + 1} blue\n  film 8 µm\n}\n`)}`;
    const plan = readPlan(text, uri);
    expect(plan.problems).toEqual([]);
    expect(plan.layers.length).toBeGreaterThan(15_000);
  });
});

describe('use', () => {
  test('a web of files is read once each', () => {
    let reads = 0;
    const host = {
      resolve: (path: string) => ({ uri: `file:///${path}` }),
      read(at: string) {
        reads++;
        const i = Number(at.slice(8));
        return i < 18
          ? { text: `use "${i + 1}"\nuse "${i + 2}"\npaint p${i} = PB29 in linseed\n` }
          : { failed: 'missing' as const };
      },
    };
    const plan = readPlan('use "0"', uri, host);
    expect(reads).toBeLessThan(60);
    expect(plan.visible.paints.size).toBe(18);
    expect(plan.clashes).toEqual([]);
  });
});
