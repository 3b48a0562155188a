/** Which cautions a plan calls for, and where. The words are the catalogue's and tested there. */
import { describe, expect, test } from 'vitest';
import { deferringLine } from '../../language/src/materials/cautions.ts';
import { studied } from '../plan/text.ts';

const HEAD =
  'plan "Made up"\nsupport linen 50 x 40 cm\npaint lead = PW1 in linseed\npaint white = PW6 in linseed\npaint red = PR108 in linseed\n';
const told = (text: string) =>
  Object.fromEntries(studied(text).cautions.map((c) => [c.hazard, [...c.where]] as const));

describe('by hazard', () => {
  test('each once, with every layer it is in, through mixes too', () => {
    const found = told(
      `${HEAD}mix pale = 1 lead + 1 white\nlayer a { colour pale }\nlayer b { colour lead }\nlayer c { colour red }`,
    );
    expect(found.lead).toEqual(['a', 'b']);
    expect(found.cadmium).toEqual(['c']);
    expect(found['vulnerable-people']).toEqual(['Made up']);
  });

  test('a session longer than eight hours lowers what the air may hold (OSHA 1910.1025: 400/hours)', () => {
    const text = (hours: number) =>
      studied(`${HEAD}studio { session ${hours} hours }\nlayer a { colour lead }`).cautions.find(
        (c) => c.hazard === 'lead',
      )!.text;
    expect(text(10)).toMatch(/10 hours that is 40 µg\/m³/);
    expect(text(8)).not.toMatch(/session of/);
  });
});

describe('by step', () => {
  test('rubbing down: what lies right below, or the coat before, is poison', () => {
    const on = (below: string, coats = 1, own = 'white') =>
      told(`${HEAD}layer a { colour ${below} }\nlayer b { prepare abrade colour ${own} coats ${coats} }`)[
        'sanding-toxic'
      ];
    expect(on('lead')).toEqual(['b']);
    expect(on('red')).toEqual(['b']);
    expect(on('white')).toBeUndefined();
    expect(on('white', 1, 'lead')).toBeUndefined();
    expect(on('white', 2, 'lead')).toEqual(['b']);
    const apart = told(
      `${HEAD}area x 50 %\narea y 50 %\nlayer a { on x colour lead }\nlayer b { on y prepare abrade colour white }`,
    );
    expect(apart['sanding-toxic']).toBeUndefined();
  });

  test('oil makes rags that heat up; water and resin do not', () => {
    expect(told(`${HEAD}layer a { colour white }`).rags).toEqual(['a']);
    expect(told(`${HEAD}ground g { material chalk-glue }\nvarnish v { resin damar }`).rags).toBeUndefined();
  });

  test('solvents by name, from mediums, preparations, alkyd and varnish', () => {
    const found = told(`${HEAD}medium thin = 50 % odourless-spirit + 50 % alkyd
layer a { colour white medium 20 % thin }
layer b { prepare wipe with ethanol colour white }
varnish v { resin damar }`);
    expect(found['odourless-spirit']).toEqual(['a']);
    expect(found['white-spirit']).toEqual(['a']);
    expect(found.ethanol).toEqual(['b']);
    expect(found.turpentine).toEqual(['v']);
    expect(found['any-solvent']).toEqual(['a', 'b', 'v']);
    expect(found['alkyd-medium']).toEqual(['a']);
    expect(told(`${HEAD}layer a { prepare wash with water colour white }`)['any-solvent']).toBeUndefined();
  });

  test('a paint is a tube unless it says that it is ground from dry pigment', () => {
    expect(told(`${HEAD}layer a { colour white }`)['dry-pigment']).toBeUndefined();
    for (const [paint, name] of [
      ['paint umber = PBr7 raw-umber in linseed hand-ground', 'umber'],
      ['paint umber = 40 g PBr7 raw-umber + 10 g PY43 in linseed', 'umber'],
      ['paint umber = PBr7 raw-umber in egg-tempera', 'umber'],
      ['pigment mine like PBr7 raw-umber { density 3.2 g/cm³ }\npaint umber = mine in oil', 'umber'],
      ['pigment umber like PBr7 raw-umber { oil-absorption 40 g/100g }', 'umber'],
      ['pigment umber like PBr7 raw-umber { hazard silica-dust }', 'umber'],
    ])
      expect(told(`${HEAD}${paint}\nlayer a { colour umber }`)).toMatchObject({
        'dry-pigment': [name],
        'silica-dust': ['a'],
        manganese: ['a'],
      });
    expect(told(`${HEAD}underlayer a { material egg colour 1 PY43 }`)['dry-pigment']).toEqual(['a']);
    // a measured colour may be that of a tube
    expect(
      told(`${HEAD}pigment mine like PY43 { masstone #b8862f }\nlayer a { colour mine }`),
    ).not.toHaveProperty('dry-pigment');
  });

  test('dust is spoken of where there is dust; poison always', () => {
    const paints = (how: string) =>
      `paint umber = PBr7 raw-umber in linseed${how}\npaint soot = PBk7 in linseed${how}\npaint yellow = PY35 in linseed${how}\npaint blue = PB28 in linseed${how}\n`;
    const of = (how: string) =>
      studied(`plan "Made up"\n${paints(how)}layer a { colour umber + soot + yellow + blue }`).cautions;
    const names = (how: string) => of(how).map((c) => c.hazard);
    for (const dust of ['silica-dust', 'manganese', 'fine-dust', 'pah', 'dry-pigment']) {
      expect(names('')).not.toContain(dust);
      expect(names(' hand-ground')).toContain(dust);
    }
    expect(names('')).toContain('cadmium');
    const cobalt = (how: string) => of(how).find((c) => c.hazard === 'cobalt')?.text;
    expect(cobalt('')).toMatch(/off the skin/);
    expect(cobalt('')).not.toMatch(/asthma/);
    expect(cobalt(' hand-ground')).toMatch(/asthma/);
  });

  test('siennas hold little manganese and are not told of as umbers are', () => {
    const found = told(
      `${HEAD}paint sienna = PBr7 burnt-sienna in linseed hand-ground\nlayer a { colour sienna }`,
    );
    expect(found).toMatchObject({ 'silica-dust': ['a'], 'dry-pigment': ['sienna'] });
    expect(found.manganese).toBeUndefined();
  });
});

test('a record is told of poisons, of old paint and of leaving be, and given no craft advice', () => {
  const found = told(
    'record "Old"\npaint lead = PW1 in linseed\nlayer a { colour lead }\nvarnish v { resin damar }',
  );
  expect(Object.keys(found)).toEqual(['lead', 'old-paint', 'restoration']);
});

test('every caution has its source, and the line that defers is not inside them but stands once', () => {
  const { cautions } = studied(
    `${HEAD}medium thin = 1 turpentine + 1 alkyd\nlayer a { prepare abrade colour lead medium 10 % thin }`,
  );
  for (const c of cautions) {
    expect(c.source.text.length).toBeGreaterThan(5);
    expect(c.text).not.toContain(deferringLine.text);
  }
});
