/** What each layer does to the last colour: the plan without it is the check; and a seeded fault is found where it was put. */
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { deltaE00 } from '../../language/src/optics/difference.ts';
import { moves } from '../../language/src/study/moves.ts';

const read = (text: string) => createAnalyser()(text, 'file:///moves.paintplan');

const head = `plan "Test"
support oak-panel 40 x 50 cm
studio { specular included }
area sky 60 %
area land 40 %
ground priming { material acrylic }
`;
const right: Readonly<Record<string, string>> = {
  tone: 'imprimatura tone { colour PBr7 burnt-sienna  medium 40 % linseed  film 4 µm }',
  grey: 'underlayer grey { colour 6 PW6 + 1 PBk9  film 30 µm }',
  veil: 'scumble veil { on sky  colour 5 PW6 + 1 PB29  medium 50 % linseed  film 4 µm }',
  mist: 'glaze mist { on sky  colour PB29  medium 60 % linseed  film 6 µm }',
  warm: 'glaze warm { on land  colour PY150  medium 60 % linseed  film 6 µm }',
};
const written = (layers: Readonly<Record<string, string>>, more = ''): string =>
  `${head}${Object.values(layers).join('\n')}\n${more}`;
const last = (text: string, area: string) => {
  const found = read(text)
    .study.areas.find((a) => a.name === area)
    ?.buildUp()
    .at(-1)?.colour;
  if (!found) throw new Error(`no colour on ${area}`);
  return found;
};

describe('a layer taken out', () => {
  test.each(['sky', 'land'])('on %s the colour without it is that of the plan without it', (area) => {
    const { study } = read(written(right));
    const found = moves(study, area);
    expect(found.map((m) => m.layer.name)).toEqual(
      ['priming', ...Object.keys(right)].filter((n) =>
        study.plan.layers.some((l) => l.name === n && l.areas.includes(area)),
      ),
    );
    for (const { layer, without, deltaE00: moved, direction } of found) {
      if (layer.name === 'priming') continue;
      const { [layer.name]: _, ...others } = right;
      const then = last(written(others), area).lab;
      expect(deltaE00(without, then), layer.name).toBeLessThan(1e-6);
      const now = last(written(right), area).lab;
      expect(moved, layer.name).toBeCloseTo(deltaE00(now, then), 6);
      expect(direction[0], layer.name).toBeCloseTo(now[0] - then[0], 6);
    }
  });

  test('an unpigmented film and a varnish move nothing, and what cannot be predicted has no moves', () => {
    const { study } = read(
      written(right, 'layer oil { on sky  medium linseed }\nvarnish last { resin damar }\n'),
    );
    expect(moves(study, 'sky').map((m) => m.layer.name)).not.toContain('last');
    expect(moves(study, 'sky').map((m) => m.layer.name)).not.toContain('oil');
    expect(moves(study, 'nowhere')).toEqual([]);
    expect(moves(read(`${head}layer a { colour nothing }`).study, 'sky')).toEqual([]);
  });
});

/** The plan with one layer changed, and the colour of the right one wanted. */
const faults: readonly [what: string, layer: string, instead: string, way: string, area: string][] = [
  ['an underlayer far too dark', 'grey', 'underlayer grey { colour 1 PW6 + 6 PBk9  film 30 µm }', 'darker', 'land'],
  ['a glaze four times as thick', 'mist', 'glaze mist { on sky  colour PB29  medium 60 % linseed  film 24 µm }', 'darker', 'sky'],
  ['a glaze of another hue', 'mist', 'glaze mist { on sky  colour PR83  medium 60 % linseed  film 8 µm }', 'redder', 'sky'],
  ['a scumble that hides', 'veil', 'scumble veil { on sky  colour 5 PW6 + 1 PR108  medium 20 % linseed  film 40 µm }', 'redder', 'sky'],
  ['a green glaze on the land', 'warm', 'glaze warm { on land  colour PG7  medium 60 % linseed  film 6 µm }', 'greener', 'land'],
  ['an underlayer of a wrong red', 'grey', 'underlayer grey { colour 1 PW6 + 6 PR108  film 30 µm }', 'redder', 'land'],
]; // biome-ignore format: one line each

describe('target-missed names the layer that is wrong, and what it does', () => {
  test.each(faults)('%s', (_, layer, instead, way, area) => {
    const target = `target ${area} ${last(written(right), area).hex} within 2\n`;
    const silent = read(written(right, target)).findings();
    expect(silent.filter((f) => f.rule === 'target-missed')).toEqual([]);
    const found = read(written({ ...right, [layer]: instead }, target))
      .findings()
      .filter((f) => f.rule === 'target-missed');
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain(`‘${layer}’ takes it`);
    expect(found[0]?.message).toMatch(new RegExp(`away: [a-z ]*${way}`));
    expect(found[0]?.related[0]?.message).toContain(`‘${layer}’`);
  });

  test('where every layer is needed, the one with the most say and the way to go are named', () => {
    const found = read(
      `${head}layer body { colour 6 PW6 + 1 PBk9  film 60 µm }\ntarget land lab(40 0 0) within 3\n`,
    )
      .findings()
      .find((f) => f.rule === 'target-missed');
    expect(found?.message).toContain('Layer ‘body’ has the most say in it: make that darker.');
  });
});
