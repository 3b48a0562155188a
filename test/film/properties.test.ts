import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compose } from '../../language/src/film/compose.ts';
import type { FilmInput, PasteInput } from '../../language/src/film/input.ts';
import type { Interval } from '../../language/src/materials/interval.ts';
import { alkyd, figure, oil, part, pigment, spirit } from './materials.ts';

const range = (min: number, max: number) =>
  fc
    .tuple(fc.double({ min, max, noNaN: true }), fc.double({ min, max, noNaN: true }))
    .map(([a, b]) => figure(Math.min(a, b), Math.max(a, b)));
const interval = (min: number, max: number): fc.Arbitrary<Interval> =>
  fc
    .tuple(...[0, 1, 2].map(() => fc.double({ min, max, noNaN: true })))
    .map((three) => [...three].sort((a, b) => a - b))
    .map(([low, likely, high]) => ({ low: low!, likely: likely!, high: high! }));

const paste: fc.Arbitrary<PasteInput> = fc
  .record({
    pigments: fc.array(
      fc.record({
        pigment: fc
          .tuple(range(0.9, 10), range(5, 250), fc.option(range(5, 250), { nil: undefined }))
          .map(([d, o, p]) => pigment('p', d, o, p)),
        mass: fc.double({ min: 0, max: 1000, noNaN: true }),
      }),
      { maxLength: 4 },
    ),
    binder: fc.constantFrom(oil(), alkyd),
    oil: fc.option(interval(0, 1), { nil: undefined }),
  })
  .map((p) => ({ name: 'paint', ...p }));

const input: fc.Arbitrary<FilmInput> = fc.record({
  pastes: fc.array(fc.record({ paste, volume: fc.double({ min: 0, max: 100, noNaN: true }) }), {
    maxLength: 4,
  }),
  medium: fc.option(
    fc.record({
      name: fc.constant('m'),
      parts: fc.array(
        fc
          .tuple(fc.constantFrom(oil(), alkyd, spirit), fc.double({ min: 0, max: 100, noNaN: true }))
          .map(([l, v]) => part(l, v)),
        { maxLength: 4 },
      ),
    }),
    { nil: undefined },
  ),
  mediumShare: interval(0, 1),
  residues: fc.array(
    fc.record({
      parts: fc.array(
        fc
          .tuple(fc.constantFrom(oil(), alkyd, spirit), fc.double({ min: 0, max: 100, noNaN: true }))
          .map(([l, v]) => part(l, v)),
        { maxLength: 3 },
      ),
      film: interval(0, 5),
    }),
    { maxLength: 2 },
  ),
  dryFilm: interval(0.5, 3000),
  solvent: fc.constant((id: string) => (id === spirit.id ? spirit : undefined)),
});

/** Every interval inside a result, with its path. */
function* intervals(value: unknown, path = ''): Generator<[string, Interval]> {
  if (typeof value !== 'object' || value === null) return;
  if ('likely' in value) yield [path, value as Interval];
  else
    for (const [key, inner] of Object.entries(value))
      if (key !== 'pigment') yield* intervals(inner, `${path}.${key}`);
}

describe('whatever is mixed', () => {
  it('every interval is finite and in order, every share within 0 and 1', () => {
    fc.assert(
      fc.property(input, (given) => {
        const made = compose(given);
        if (!made) return;
        for (const [path, x] of intervals(made)) {
          expect([path, Number.isFinite(x.low + x.likely + x.high)]).toEqual([path, true]);
          expect([path, x.low <= x.likely && x.likely <= x.high]).toEqual([path, true]);
          if (/Fraction|pvc|volumeSolids|Share/.test(path)) {
            expect(x.low).toBeGreaterThanOrEqual(0);
            expect(x.high).toBeLessThanOrEqual(1 + 1e-9);
          }
        }
        expect(made.fatness.high).toBeLessThanOrEqual(1);
        const parts = [...made.pigments, ...made.binders];
        expect(parts.reduce((all, p) => all + p.volumeFraction.likely, 0)).toBeCloseTo(1, 9);
        expect(made.dryFilm.likely).toBeCloseTo(given.dryFilm.likely + made.residue.likely, 9);
        // what was wiped on takes no more paint
        expect(made.wetFilm).toEqual(compose({ ...given, residues: [] })!.wetFilm);
      }),
      { numRuns: 500, seed: 1911 },
    );
  });

  it('more of a medium with oil in it is never leaner', () => {
    fc.assert(
      fc.property(
        input,
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.09, noNaN: true }),
        (given, share, more) => {
          const parts = [part(oil(), 1), part(spirit, 1)];
          const at = (s: number) =>
            compose({ ...given, medium: { name: 'm', parts }, mediumShare: { low: s, likely: s, high: s } });
          const less = at(share);
          const after = at(share + more);
          if (!less || !after) return;
          for (const end of ['low', 'likely', 'high'] as const)
            expect(after.fatness[end]).toBeGreaterThanOrEqual(less.fatness[end] - 1e-9);
        },
      ),
      { numRuns: 300, seed: 1949 },
    );
  });
});
