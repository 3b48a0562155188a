/** Names a painter writes find the right thing, and wrong ones find what was meant. */
import { describe, expect, test } from 'vitest';
import {
  agent,
  allPigments,
  binder,
  ground,
  lookupPigment,
  materialNames,
  nearest,
  solvent,
  support,
} from '../../language/src/materials/catalogue.ts';
import { editDistance } from '../../language/src/materials/nearest.ts';

const near = (name: string): readonly string[] => {
  const found = lookupPigment(name);
  return found.kind === 'unknown' ? found.near : [];
};

describe('pigments', () => {
  test.each([
    ['PB29', undefined, 'PB29'],
    ['pb29', undefined, 'PB29'],
    ['PB29', 'natural', 'PB29 natural'],
    ['PB29', 'synthetic', 'PB29'],
    ['PBK9', undefined, 'PBk9'],
    ['PY42', 'transparent', 'PY42 transparent'],
    ['PB15:3', undefined, 'PB15:3'],
    ['PR101', 'Violet', 'PR101 violet'],
    ['lead-tin-yellow-1', undefined, 'lead-tin-yellow-1'],
  ])('%s %s is %s', (code, variety, id) => {
    const found = lookupPigment(code, variety);
    expect(found.kind === 'found' && found.pigment.id).toBe(id);
  });

  test('PBr7 by itself is several pigments', () => {
    const found = lookupPigment('PBr7');
    expect(found.kind === 'needs-variety' && found.choices.map((p) => p.variety)).toEqual([
      'raw-sienna',
      'burnt-sienna',
      'raw-umber',
      'burnt-umber',
    ]);
  });

  test('a variety that is not there offers those that are', () => {
    const found = lookupPigment('PB29', 'ashes');
    expect(found.kind === 'unknown-variety' && found.choices.map((p) => p.id)).toEqual([
      'PB29',
      'PB29 natural',
    ]);
  });

  test.each([
    ['cobalt-blue', 'PB28'],
    ['ultramarine', 'PB29'],
    ['french-ultramarine', 'PB29'],
    ['titanium-white', 'PW6'],
    ['titanuim-white', 'PW6'],
    ['lead-white', 'PW1'],
    ['burnt-sienna', 'PBr7 burnt-sienna'],
    ['umber', 'PBr7 raw-umber'],
    ['viridian-green', 'PG18'],
    ['cadmium-yellow', 'PY37'],
    ['phthalo-blue', 'PB15:3'],
    ['alizarin', 'PR83'],
    ['caput-mortuum', 'PR101 violet'],
    ['PB92', 'PB29'],
    ['pb-29', 'PB29'],
    ['vermillion', 'PR106'],
  ])('%s makes one think of %s', (name, id) => expect(near(name)[0]).toBe(id));

  test('nonsense, __proto__ and very long words suggest nothing and break nothing', () => {
    for (const name of ['xyzzyqqq', '__proto__', 'constructor', '', 'x'.repeat(100_000)])
      expect(near(name).length).toBeLessThanOrEqual(3);
    expect(near('xyzzyqqq')).toEqual([]);
  });

  test('every suggestion can be looked up', () => {
    for (const word of ['cobalt', 'cadmium', 'green', 'PB99', 'PR1', 'madder', 'ochre', 'black'])
      for (const id of near(word)) {
        const [code = '', variety] = id.split(' ');
        expect(['found', 'needs-variety'], id).toContain(lookupPigment(code, variety).kind);
      }
  });

  test('every id is unique and finds itself', () => {
    expect(new Set(allPigments().map((p) => p.id)).size).toBe(allPigments().length);
    for (const p of allPigments()) {
      const [code = '', variety] = p.id.split(' ');
      const found = lookupPigment(code, variety);
      expect(found.kind === 'found' && found.pigment, p.id).toBe(p);
    }
  });

  /** Colour Index names of the reference tables this catalogue was built from. */
  const REFERENCE =
    'PW1 PW4 PW6 PW5 PW18 PW21 PW19 PY43 PY42 PY35 PY37 PO20 PR108 PY40 PY41 PBr24 PY53 PY3 PY74 PY150 PY110 PY129 PY34 PY36 PY32 PY39 NY24 NY20 PR101 PR102 NBr8 NBk6 PR83 NR9 NR4 PR106 PR105 PR104 PR122 PV19 PR177 PR254 PR264 PR179 PR112 PV14 PV15 PV16 PV23 PB29 PB28 PB35 PB36 PB27 PB15:3 PB33 PB60 PB30 PB31 PB32 NB1 PG17 PG18 PG7 PG36 PG19 PG50 PG23 PG20 PG21 PBk6 PBk7 PBk8 PBk9 PBk11 PBk10';

  test('holds every code of the reference tables', () => {
    for (const code of REFERENCE.split(' ')) expect(lookupPigment(code).kind, code).toBe('found');
    for (const id of ['lead-tin-yellow-1', 'lead-tin-yellow-2']) expect(lookupPigment(id).kind).toBe('found');
  });
});

describe('materials', () => {
  test.each([
    [binder, 'linseed', 'linseed'],
    [binder, 'Linseed Oil', 'linseed'],
    [binder, 'venice-turpentine', 'larch-turpentine'],
    [binder, 'rabbit-skin-glue', 'glue'],
    [solvent, 'mineral-spirits', 'white-spirit'],
    [solvent, 'stoddard-solvent', 'white-spirit'],
    [support, 'aluminum', 'aluminium'],
    [ground, 'acrylic-gesso', 'acrylic'],
    [ground, 'pva', 'pva-size'],
    [agent, 'garlic-juice', 'garlic'],
    [agent, 'surgical-spirit', 'surgical-spirit'],
  ])('%o reads %s as %s', (look: (id: string) => { readonly id: string } | undefined, name, id) =>
    expect(look(name)?.id).toBe(id),
  );

  test('what is not there is undefined, inherited names too', () => {
    for (const look of [binder, solvent, support, ground, agent])
      for (const name of ['', 'toString', '__proto__', 'nothing']) expect(look(name)).toBeUndefined();
  });

  test('what brief and language name by trade name is there', () => {
    const named = [
      [
        binder,
        'oil linseed cold-pressed-linseed boiled-linseed sun-thickened-linseed stand-oil walnut poppy safflower sunflower tung perilla soya hempseed alkyd egg-yolk egg-tempera casein glue gum-arabic acrylic damar mastic larch-turpentine beeswax',
      ],
      [
        solvent,
        'turpentine white-spirit odourless-spirit naphtha ethanol isopropanol methanol methylated-spirit ammonia spike-oil pine-oil water',
      ],
      [
        support,
        'linen cotton linen-on-panel oak-panel poplar-panel plywood hardboard mdf aluminium copper paper board wall',
      ],
      [
        ground,
        'chalk-glue gypsum-glue half-chalk acrylic oil-ground glue pva-size gold silver charcoal ink egg bole dirt wax shellac gesso',
      ],
      [agent, 'soap garlic onion potato silicone wax-paste surgical-spirit saliva ox-gall'],
    ] as const;
    for (const [look, ids] of named) for (const id of ids.split(' ')) expect(look(id)?.id, id).toBe(id);
  });

  test('roles name what may stand in them', () => {
    expect(materialNames('medium')).toEqual(
      expect.arrayContaining(['linseed', 'alkyd', 'turpentine', 'damar-varnish']),
    );
    expect(materialNames('medium')).not.toContain('casein');
    expect(materialNames('resin')).toEqual(expect.arrayContaining(['damar', 'ketone-resin', 'beeswax']));
    expect(materialNames('resin')).not.toContain('linseed');
    expect(materialNames('agent')).toEqual(expect.arrayContaining(['walnut', 'turpentine', 'soap']));
    for (const role of ['medium', 'binder', 'resin', 'support', 'ground', 'agent'] as const)
      expect(new Set(materialNames(role)).size).toBe(materialNames(role).length);
  });
});

describe('nearest', () => {
  test('edit distance with swaps (Damerau–Levenshtein, restricted): textbook pairs', () => {
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('saturday', 'sunday')).toBe(3);
    expect(editDistance('ca', 'ac')).toBe(1);
    expect(editDistance('', 'abc')).toBe(3);
    expect(editDistance('same', 'same')).toBe(0);
  });

  test('gives the nearest first, at most so many', () => {
    expect(nearest('linsed', ['linseed', 'linen', 'walnut'])).toEqual(['linseed', 'linen']);
    expect(nearest('turpentin', ['turpentine'], 1)).toEqual(['turpentine']);
    expect(nearest('egg', ['oak', 'ink'])).toEqual([]);
  });
});
