/** Order of layers across cross-sections: any order of statements, however contradictory, ends and is told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { order } from '../../language/src/studio/cycles.ts';
import { sampleConflicts, sampleSequence, thicknessOutside } from '../../language/src/studio/samples.ts';
import { layer, measure, plan, sample } from './fixtures.ts';

const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((name, i) => layer(name, i)) as [
  ReturnType<typeof layer>,
  ReturnType<typeof layer>,
  ReturnType<typeof layer>,
  ReturnType<typeof layer>,
];
const record = (...samples: ReturnType<typeof sample>[]) =>
  plan({ kind: 'record', layers: [a, b, c, d], samples });

describe('order across samples', () => {
  test('samples that agree are silent, and together give the order', () => {
    const agreeing = record(
      sample('S1', [[a], [c]]),
      sample('S2', [[a], [b], [d]]),
      sample('S3', [[b], [c]]),
    );
    expect(sampleConflicts(agreeing)).toEqual([]);
    const sequence = sampleSequence(agreeing);
    for (const [low, high] of ['ac', 'ab', 'bd', 'bc'])
      expect(sequence.indexOf(low!)).toBeLessThan(sequence.indexOf(high!));
  });

  test('two samples that contradict one another: the chain of names, with the samples that say so', () => {
    const [conflict, ...others] = sampleConflicts(
      record(sample('S1', [[a], [b]]), sample('S2', [[b], [c]]), sample('S3', [[c], [a]])),
    );
    expect(others).toEqual([]);
    expect(conflict!.against).toBe('samples');
    expect(conflict!.chain).toEqual(['c', 'a', 'b', 'c']);
    expect(conflict!.evidence.map((e) => e.sample)).toEqual(['S3', 'S1', 'S2']);
  });

  test('one sample against the order of the record', () => {
    const conflicts = sampleConflicts(record(sample('S1', [[a], [c], [b]])));
    expect(conflicts.map(({ against, chain }) => ({ against, chain }))).toEqual([
      { against: 'record', chain: ['c', 'b', 'c'] },
    ]);
  });

  test('a layer met twice in one sample', () => {
    expect(sampleConflicts(record(sample('S1', [[a], [b], [a]])))[0]!.chain).toEqual(['b', 'a', 'b']);
    expect(sampleConflicts(record(sample('S1', [[a], [a]])))[0]!.chain).toEqual(['a', 'a']);
  });

  test('names the record does not know are passed over', () => {
    const broken = sample('S1', [[a], [b]]);
    const layers = [
      broken.layers[0]!,
      { ...broken.layers[1]!, layer: { ...broken.layers[1]!.layer, is: undefined } },
    ];
    expect(sampleConflicts(record({ ...broken, layers }))).toEqual([]);
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
  const film = (value: Parameters<typeof measure>[0], coats?: number) =>
    layer('a', 0, { film: measure(value, 'µm'), coats: coats ? measure(coats) : undefined });
  const outside = (of: ReturnType<typeof layer>, found: Parameters<typeof measure>[0]) =>
    thicknessOutside(plan({ kind: 'record', samples: [sample('S1', [[of, found]])] })).map((t) => t.side);

  test('a range is taken at its word, to the last digit', () => {
    const of = film({ low: 20, likely: 25, high: 30 });
    expect(outside(of, 20)).toEqual([]);
    expect(outside(of, 30)).toEqual([]);
    expect(outside(of, 19.9)).toEqual(['thinner']);
    expect(outside(of, 30.1)).toEqual(['thicker']);
    expect(outside(of, { low: 10, likely: 15, high: 20 })).toEqual([]);
  });

  test('one figure leaves room for what a film varies by; coats add up', () => {
    expect(outside(film(20), 26)).toEqual([]);
    expect(outside(film(20), 27)).toEqual(['thicker']);
    expect(outside(film(20, 2), 40)).toEqual([]);
    expect(outside(film(20, 2), 20)).toEqual(['thinner']);
  });

  test('unknown films say nothing', () => {
    const unknown = layer('a', 0, { film: { ...measure(1), given: 'unknown' } });
    expect(outside(unknown, 500)).toEqual([]);
    expect(outside(layer('a', 0), 500)).toEqual([]);
  });
});
