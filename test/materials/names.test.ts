/** No name is taken twice where it would be read two ways, and every name can be written in a plan. */
import { describe, expect, test } from 'vitest';
import { agents } from '../../language/src/materials/agents.ts';
import { binders } from '../../language/src/materials/binders.ts';
import { grounds } from '../../language/src/materials/grounds.ts';
import { pigments } from '../../language/src/materials/pigments.ts';
import { solvents } from '../../language/src/materials/solvents.ts';
import { supports } from '../../language/src/materials/supports.ts';
import { readPlan } from '../../language/src/plan/read.ts';

interface Named {
  readonly id: string;
  readonly names: readonly string[];
}
const word = (name: string) => name.toLowerCase().replace(/[\s_]+/g, '-');
const taken = (...tables: readonly (readonly Named[])[]): string[] =>
  tables.flat().flatMap((x) => [...new Set([x.id, ...x.names.map(word)])]);
const twice = (names: readonly string[]): string[] => names.filter((n, i) => names.indexOf(n) !== i);

describe('one name, one thing', () => {
  test('in each table', () => {
    for (const table of [binders, solvents, supports, grounds, agents])
      expect(twice(taken(table))).toEqual([]);
  });

  test('in a medium: oils, resins and solvents', () => expect(twice(taken(binders, solvents))).toEqual([]));

  test('as an agent: oils, solvents and the rest', () => {
    // egg, glue and the like are no agents; a shared name there would still be read as the binder
    expect(twice(taken(binders, solvents, agents))).toEqual([]);
  });

  test('no binder or solvent is called as a pigment is', () => {
    const ids = pigments.map((p) => p.id.toLowerCase());
    for (const name of taken(binders, solvents)) expect(ids, name).not.toContain(name);
  });

  test('no two pigments share their first name', () =>
    expect(twice(pigments.map((p) => word(p.names[0] ?? '')))).toEqual([]));
});

describe('ids are plain words', () => {
  test.each([binders, solvents, supports, grounds, agents].flat().map((x) => [x.id]))('%s', (id) =>
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/),
  );
  test.each(pigments.filter((p) => p.variety).map((p) => [p.id, p.variety]))('%s', (_, variety) =>
    expect(variety).toMatch(/^[a-z]+(-[a-z]+)*$/),
  );
});

const errors = (text: string): string[] =>
  readPlan(text, 'file:///names.paintplan')
    .problems.filter((p) => p.severity === 'error')
    .map((p) => `${text}: ${p.message}`);

describe('can be written in a plan', () => {
  test('pigments', () => {
    for (const p of pigments)
      expect(
        errors(
          `plan "x"\nsupport linen 40 x 50 cm\npaint it = ${p.id} in linseed\nlayer one { colour it film thin }\n`,
        ),
      ).toEqual([]);
  });

  test('binders, solvents, agents, grounds, supports', () => {
    for (const b of binders)
      expect(
        errors(
          `plan "x"\nsupport linen 40 x 50 cm\npaint it = PB29 in ${b.id}\nlayer one { colour it film thin }\n`,
        ),
      ).toEqual([]);
    for (const m of [...binders, ...solvents])
      expect(
        errors(
          `plan "x"\nsupport linen 40 x 50 cm\nmedium it = 50 % linseed + 50 % ${m.id === 'linseed' ? 'walnut' : m.id}\n`,
        ),
      ).toEqual([]);
    for (const a of [...solvents, ...agents])
      expect(
        errors(
          `plan "x"\nsupport linen 40 x 50 cm\npaint it = PB29 in linseed\nlayer one { prepare wipe with ${a.id} colour it film thin }\n`,
        ),
      ).toEqual([]);
    for (const g of grounds)
      expect(
        errors(`record "x"\nsupport linen 40 x 50 cm\n${g.roles[0]} one { material ${g.id} }\n`),
      ).toEqual([]);
    for (const s of supports) expect(errors(`plan "x"\nsupport ${s.id} 40 x 50 cm\n`)).toEqual([]);
  });
});
