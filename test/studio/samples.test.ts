/** Order of layers across cross-sections: any order of statements, however contradictory, ends and is told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { order } from '../../language/src/studio/cycles.ts';
import { sampleConflicts, sampleSequence, thicknessOutside } from '../../language/src/studio/samples.ts';
import { planned } from '../plan/text.ts';

/** A record of four layers and samples, each a row of layers from the lowest up. */
const record = (...samples: readonly (readonly string[])[]) =>
  planned(`record "Made up for a test"
${['a', 'b', 'c', 'd'].map((name) => `layer ${name} { colour PW6 }\n`).join('')}
${samples.map((layers, i) => `sample S${i + 1} {\n${layers.map((l) => `  ${l}\n`).join('')}}\n`).join('')}`);

describe('order across samples', () => {
  test('samples that agree are silent, and together give the order', () => {
    const agreeing = record(['a', 'c'], ['a', 'b', 'd'], ['b', 'c']);
    expect(sampleConflicts(agreeing)).toEqual([]);
    const sequence = sampleSequence(agreeing);
    for (const [low, high] of ['ac', 'ab', 'bd', 'bc'])
      expect(sequence.indexOf(low!)).toBeLessThan(sequence.indexOf(high!));
  });

  test('two samples that contradict one another: the chain of names, with the samples that say so', () => {
    const [conflict, ...others] = sampleConflicts(record(['a', 'b'], ['b', 'c'], ['c', 'a']));
    expect(others).toEqual([]);
    expect(conflict!.against).toBe('samples');
    expect(conflict!.chain).toEqual(['c', 'a', 'b', 'c']);
    expect(conflict!.evidence.map((e) => e.sample)).toEqual(['S3', 'S1', 'S2']);
  });

  test('one sample against the order of the record', () => {
    const conflicts = sampleConflicts(record(['a', 'c', 'b']));
    expect(conflicts.map(({ against, chain }) => ({ against, chain }))).toEqual([
      { against: 'record', chain: ['c', 'b', 'c'] },
    ]);
  });

  test('a layer met twice in one sample', () => {
    expect(sampleConflicts(record(['a', 'b', 'a']))[0]!.chain).toEqual(['b', 'a', 'b']);
    expect(sampleConflicts(record(['a', 'a']))[0]!.chain).toEqual(['a', 'a']);
  });

  test('names the record does not know are passed over', () => {
    expect(sampleConflicts(record(['b', 'nobody', 'a']))).not.toEqual([]);
    expect(sampleConflicts(record(['a', 'nobody', 'b'], ['nobody', 'a']))).toEqual([]);
  });
});

describe('the ordering itself', () => {
  const graphs = fc
    .integer({ min: 1, max: 12 })
    .chain((n) =>
      fc.tuple(
        fc.constant(n),
        fc.array(fc.record({ from: fc.nat(n - 1), to: fc.nat(n - 1) }), { maxLength: 30 }),
      ),
    );

  /** Nodes that can reach themselves, by the plain and slow way. */
  function onCycles(n: number, edges: readonly { from: number; to: number }[]): Set<number> {
    const reach = Array.from(
      { length: n },
      (_, i) => new Set(edges.filter((e) => e.from === i).map((e) => e.to)),
    );
    for (let k = 0; k < n; k++)
      for (const from of reach) if (from.has(k)) for (const to of reach[k]!) from.add(to);
    return new Set([...reach.keys()].filter((i) => reach[i]!.has(i)));
  }

  test('every cycle told is one; one is told exactly where one exists; the rest is ordered', () => {
    fc.assert(
      fc.property(graphs, ([n, edges]) => {
        const { sequence, cycles } = order(n, edges);
        expect([...sequence].sort((x, y) => x - y)).toEqual([...Array(n).keys()]);
        for (const cycle of cycles)
          cycle.forEach((e, i) => {
            expect(edges).toContain(e);
            expect(e.to).toBe(cycle[(i + 1) % cycle.length]!.from);
          });
        const looping = onCycles(n, edges);
        expect(cycles.length > 0).toBe(looping.size > 0);
        for (const e of edges)
          if (!looping.has(e.from) || !looping.has(e.to))
            expect(sequence.indexOf(e.from)).toBeLessThan(sequence.indexOf(e.to));
      }),
      { numRuns: 500, seed: 4 },
    );
  });

  test('a ring of 200,000 layers ends, without exhausting the stack', () => {
    const n = 200_000;
    const ring = Array.from({ length: n }, (_, i) => ({ from: i, to: (i + 1) % n }));
    expect(order(n, ring).cycles.map((c) => c.length)).toEqual([n]);
  });
});

describe('thickness', () => {
  /** Sides on which a film found in a sample lies outside of the one stated. */
  const outside = (stated: string, found: string) =>
    thicknessOutside(
      planned(
        `record "Made up for a test"\nlayer a { colour PW6   ${stated} }\nsample S1 {\n  a ${found} µm\n}\n`,
      ),
    ).map((t) => t.side);

  test('a range is taken at its word, to the last digit', () => {
    const of = 'film 20..30 µm';
    expect(outside(of, '20')).toEqual([]);
    expect(outside(of, '30')).toEqual([]);
    expect(outside(of, '19.9')).toEqual(['thinner']);
    expect(outside(of, '30.1')).toEqual(['thicker']);
    expect(outside(of, '10..20')).toEqual([]);
  });

  test('one figure leaves room for what a film varies by; coats add up', () => {
    expect(outside('film 20 µm', '26')).toEqual([]);
    expect(outside('film 20 µm', '27')).toEqual(['thicker']);
    expect(outside('film 20 µm   coats 2', '40')).toEqual([]);
    expect(outside('film 20 µm   coats 2', '20')).toEqual(['thinner']);
  });

  test('unknown films say nothing', () => {
    expect(outside('film unknown', '500')).toEqual([]);
    expect(outside('', '500')).toEqual([]);
  });
});
