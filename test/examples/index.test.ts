/** What an example must say of itself, and that the index tells of all of them. */
import { describe, expect, test } from 'vitest';
import { allPigments } from '../../language/src/materials/catalogue.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { bare, index, inFolder, notes, plans, rows, text } from './shown.ts';

const read = (path: string) => readPlan(text(path), path);
const whole = plans.filter((p) => read(p).kind !== 'palette');

describe('each example', () => {
  test.each(plans.map((p) => [p]))(
    '%s says in its first line what it teaches, and that it is invented',
    (path) => expect(text(path).split('\n', 1)[0]).toMatch(/^\/\/ Invented\. [A-Z].{30,}[.,:]?$/),
  );

  test.each(notes.map((p) => [p]))('%s says at its head that it is invented', (path) =>
    expect(text(path).split('\n').slice(0, 3).join('\n')).toMatch(/\*Invented\. /),
  );

  test.each([...plans, ...notes].map((p) => [p]))('%s has its sentence in the index', (path) =>
    expect(rows().get(inFolder(path)) ?? '').toMatch(/^.{30,}$/),
  );

  test('the index names no file that is not there, and says that all is invented', () => {
    expect([...rows().keys()].sort()).toEqual([...plans, ...notes].map(inFolder).sort());
    expect(index()).toContain('All scenarios are invented');
  });

  test.each(whole.filter((p) => !p.endsWith('first-plan.paintplan')).map((p) => [p]))(
    '%s can be read at one sitting',
    (path) => {
      const lines = text(path).trimEnd().split('\n').length;
      expect(lines).toBeGreaterThanOrEqual(20);
      expect(lines).toBeLessThanOrEqual(120);
    },
  );
});

describe('the set', () => {
  test('has a dozen plans, two records, a note of several plans', () => {
    const kinds = plans.map((p) => read(p).kind);
    expect(kinds.filter((k) => k === 'plan').length).toBeGreaterThanOrEqual(12);
    expect(kinds.filter((k) => k === 'record').length).toBeGreaterThanOrEqual(2);
    expect(notes.map((n) => text(n).match(/^```paintplan$/gm)?.length ?? 0)).toContain(3);
  });

  test('the big palette holds thirty described paints, each of one lasting pigment or of lasting ones', () => {
    const palette = read('examples/palette/thirty-paints.paintplan');
    expect(palette.paints).toHaveLength(30);
    // ASTM D4302 classes as the catalogue has them (from memory, marked so there)
    const lasting = new Set(
      allPigments()
        .filter((p) => p.lightfastness?.value === 'I')
        .map((p) => p.id),
    );
    for (const paint of palette.paints) {
      expect(paint.description, paint.name).toMatch(/^.{15,}/);
      for (const { ingredient } of paint.formula?.parts ?? []) {
        expect(ingredient.is.kind, paint.name).toBe('pigment');
        if (ingredient.is.kind === 'pigment') expect(lasting, paint.name).toContain(ingredient.is.pigment.id);
      }
    }
    expect(palette.paints.filter((p) => p.oil).length).toBeGreaterThanOrEqual(5);
    expect(
      plans.filter((p) => bare(p) && text(p).includes('use "palette/thirty-paints.paintplan"')).length,
    ).toBeGreaterThanOrEqual(2);
  });

  test('a record keeps what contradicts its dates and its samples, with the reasons', () => {
    const kept = plans
      .map(read)
      .filter((p) => p.kind === 'record')
      .flatMap((p) => [...p.allows, ...p.layers.flatMap((l) => l.allows)]);
    expect(kept.map((a) => a.rule).sort()).toEqual(['not-in-period', 'sample-order-conflict']);
    for (const allow of kept) expect(allow.because?.length).toBeGreaterThan(20);
  });
});
