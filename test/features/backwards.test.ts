/** Ways from a wanted colour back through a plan's layers: each is put in, read again, and keeps what it promised. */
import { expect, test, vi } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { type Backwards, backwards, type Found } from '../../language/src/features/backwards.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';

// seconds of searching each: a guard against hanging, no measure
vi.setConfig({ testTimeout: 120_000 });

const text = `// Invented.
plan "Bottle against a wall"
start 2027-01-04
support hardboard 40 x 30 cm
area bottle 40 %
area wall 60 %
paint white = PW6 in linseed
paint black = PBk9 in linseed
paint blue = PB29 in linseed
paint green = PG18 in linseed
paint yellow = PY150 in linseed
paint rust = PR101 transparent in linseed
paint cadmium = PR108 in linseed
medium rich = 20 % turpentine + 80 % stand-oil
ground priming { material acrylic   wait 14 days }
underlayer grisaille { colour 6 white + 1 black   film 20 µm   wait 4 weeks }
glaze warm { on bottle   prepare abrade   colour blue   medium 60 % rich   film 4 µm }
varnish final { resin ketone-resin   after 9 months }
`;
const read = (source: string) => createAnalyser()(source, 'file:///made-up.paintplan');
const sought = (wanted: Partial<Backwards> = {}, names = ['grisaille', 'warm'], source = text) => {
  const { plan, study } = read(source);
  const layers = plan.layers.filter((l) => names.includes(l.name));
  return backwards(study, { area: 'bottle', target: [52, 24, 28], within: 5, layers, ...wanted });
};
const ways = (...args: Parameters<typeof sought>): readonly Found[] => {
  const found = sought(...args);
  if ('hindered' in found) throw new Error(found.hindered);
  return found;
};
const grave = (source: string) =>
  read(source)
    .findings()
    .filter((f) => f.severity === 'error' || f.severity === 'warning')
    .map((f) => f.rule)
    .sort();

test('What a way promises is what the plan with it shows, and it draws no new warning', () => {
  const found = ways();
  expect(found.length).toBeGreaterThanOrEqual(2);
  for (const way of found) {
    const { study, plan } = read(way.text);
    const seen = study.areas
      .find((a) => a.name === 'bottle')!
      .buildUp()
      .at(-1)!.colour;
    expect(deltaE00(seen.lab, way.colour.lab)).toBeLessThan(1e-6);
    expect(way.deltaE00).toBeCloseTo(deltaE00([52, 24, 28], seen.lab), 6);
    expect(way.reached).toBe(way.deltaE00 <= 5);
    expect(grave(way.text)).toEqual(grave(text));
    // only transparent paints glaze, and only the layers named change
    expect(
      way.layers.filter((l) => l.kind === 'glaze').flatMap((l) => l.parts.map((p) => p.paint)),
    ).not.toContain('cadmium');
    expect(plan.layers.map((l) => l.name)).toEqual(
      expect.arrayContaining(['priming', 'grisaille', 'warm', 'final']),
    );
    const last = study.calendar.entries.findLast((e) => way.layers.some((l) => l.layer === e.layer));
    expect(way.day).toBe(last!.likely);
  }
  expect(new Set(found.map((f) => JSON.stringify(f.layers))).size).toBe(found.length);
});

test('A day by which it must be laid, and coats at most, are kept to', () => {
  const [first] = ways();
  for (const way of ways({ by: first!.day! })) expect(way.day).toBeLessThanOrEqual(first!.day!);
  expect(ways({ by: 1 })).toEqual([]);
  for (const way of ways({ coats: 1, target: [25, 15, -30] }))
    for (const l of way.layers) expect(l.coats).toBe(1);
});

test('A colour beyond these paints is not called reached, and one is still told how near they come', () => {
  const found = ways({ target: [95, -60, 90], within: 2 });
  expect(found.length).toBeGreaterThan(0);
  for (const way of found) expect(way.reached).toBe(false);
});

test.each([
  ['a layer that is not there', ['grisaille', 'warm'], { area: 'wall' }, /‘warm’ does not lie on wall/],
  ['a ground', ['priming'], {}, /‘priming’ is a ground/],
  ['a varnish', ['final'], {}, /‘final’ is a varnish/],
  ['none', [], {}, /No layer is named/],
] as const)('%s: why not', (_, names, wanted, why) => {
  const found = sought(wanted, [...names]);
  expect('hindered' in found && found.hindered).toMatch(why);
});

test('Where what lies above hides them, that is said', () => {
  const covered = text.replace('varnish final', 'leaf cover { on bottle  material gold }\nvarnish final');
  const found = sought({}, ['grisaille', 'warm'], covered);
  expect('hindered' in found && found.hindered).toMatch(
    /‘cover’ lies over them on bottle and lets nothing through/,
  );
});
