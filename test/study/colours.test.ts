/** The chain of colours on a made-up pair of pigments: the laws it keeps, whatever the shipped data say. */
import { describe, expect, it, vi } from 'vitest';
import type { Layer } from '../../language/src/plan/plan.ts';
import { createStudyMemo, study } from '../../language/src/study/build.ts';
import { colourWith, compositionOf } from '../../language/src/study/what-if.ts';
import {
  area,
  code,
  colour,
  formula,
  layer,
  measure,
  medium,
  paint,
  place,
  plan,
  stated,
  unknown,
  usePaint,
  withMedium,
} from './plans.ts';

vi.mock('../../language/src/optics/data.ts', () => {
  const band = (f: (i: number) => number) => Float64Array.from({ length: 31 }, (_, i) => f(i));
  const table = new Map([
    // a scattering white and a clear red
    [
      'PW6',
      { k: band(() => 0.002), s: band(() => 1.2), confidence: 'A', residual: 1, basis: 'made up, white' },
    ],
    [
      'PR177',
      {
        k: band((i) => (i < 18 ? 2 : 0.02)),
        s: band(() => 0.02),
        confidence: 'B',
        residual: 3,
        basis: 'made up, red',
      },
    ],
  ]);
  return {
    opticalData: (id: string) => table.get(id),
    pigmentsWithData: () => [...table.keys()],
  };
});

const white = paint('white', 'PW6');
const red = paint('red', 'PR177');
const oil = medium('oil', [100, 'walnut']);
const grey = layer('ground', 'grey', stated('#808080'));
const glaze = (name: string, more: Partial<Layer> = {}) =>
  layer('glaze', name, { ...colour([1, usePaint(red)]), ...withMedium(0.6, oil), film: measure(8), ...more });
type Options = Parameters<typeof plan>[1];
const last = (layers: readonly Layer[], options: Options = {}, on = 'all') =>
  study(plan(layers, options))
    .areas.find((a) => a.name === on)!
    .buildUp()
    .at(-1)?.colour;

describe('predicted colours', () => {
  it('a stated colour is what it says, and certain', () => {
    const seen = last([grey])!;
    expect(seen.hex).toBe('#808080');
    expect(seen.confidence).toBe('A');
    expect(seen.radius).toBeLessThanOrEqual(1);
  });

  it('a glaze darkens and colours; a body colour hides', () => {
    const [under, over, hidden] = [
      last([grey])!,
      last([grey, glaze('a')])!,
      last([grey, layer('layer', 'w', { ...colour([1, usePaint(white)]), film: measure(200) })])!,
    ];
    expect(over.lab[0]).toBeLessThan(under.lab[0]);
    expect(over.lab[1]).toBeGreaterThan(20);
    expect(hidden.lab[0]).toBeGreaterThan(90);
  });

  it('three coats are one film of three times the thickness', () => {
    const coats = last([grey, glaze('a', { coats: measure(3), film: measure(5) })])!;
    const thick = last([grey, glaze('a', { film: measure(15) })])!;
    const three = last([
      grey,
      glaze('a', { film: measure(5) }),
      glaze('b', { film: measure(5) }),
      glaze('c', { film: measure(5) }),
    ])!;
    for (const i of [0, 1, 2] as const) {
      expect(coats.lab[i]).toBeCloseTo(thick.lab[i], 9);
      expect(three.lab[i]).toBeCloseTo(thick.lab[i], 6);
    }
  });

  it('wiping out leaves a quarter of the film, there and nowhere else', () => {
    const result = study(plan([grey, glaze('a', { wipeOut: [area('x')] })], { on: ['x', 'y'] }));
    const [x, y] = ['x', 'y'].map((name) => result.layers[1]!.colours().find((c) => c.area === name)!);
    const quarter = last([grey, glaze('a', { film: measure(2) })])!;
    for (const i of [0, 1, 2] as const) expect(x!.lab[i]).toBeCloseTo(quarter.lab[i], 9);
    expect(y!.lab[1]).toBeGreaterThan(x!.lab[1]);
    expect(x!.radius).toBeGreaterThan(quarter.radius);
  });

  it('is less sure of a film that may be anything from thin to thick, and of what rests on worse data', () => {
    const sure = last([grey, glaze('a', { film: measure(8) })])!;
    const vague = last([grey, glaze('a', { film: measure(3, 20) })])!;
    expect(vague.radius).toBeGreaterThan(sure.radius);
    expect(sure.confidence).toBe('B');
    expect(sure.basis.join()).toContain('made up, red');
  });

  it('what is unknown is transparent and said to be so; what has no data is left out and said to be so', () => {
    const options: Options = { kind: 'record' };
    const veiled = last([grey, layer('glaze', 'veil', { colour: { kind: 'unknown', place } })], options)!;
    expect(veiled.lab).toEqual(last([grey], options)!.lab);
    expect(veiled.radius).toBeGreaterThan(10);
    expect(veiled.basis.join()).toContain('veil unknown');
    const lost = last([grey, layer('glaze', 'b', { ...colour([1, code('PB29')]), film: measure(8) })])!;
    expect(lost.confidence).toBe('D');
    expect(lost.radius).toBeGreaterThan(10);
    expect(lost.basis.join()).toContain('no optical data');
  });

  it('predicts nothing above what cannot be known, until something covers it', () => {
    const broken = layer('glaze', 'broken', {
      colour: { kind: 'formula', formula: formula([[1, unknown]]) },
    });
    const result = study(plan([grey, broken, glaze('a'), layer('layer', 'cover', stated('#ffffff'))]));
    expect(result.layers.map((l) => l.colours().length)).toEqual([1, 0, 0, 1]);
  });

  it('a varnish brings depth back to a matt film; the plan may say how colours are compared', () => {
    const stiff = paint('stiff', 'PR177', 'linseed', measure(0.4));
    const lean = layer('underlayer', 'u', { ...colour([1, usePaint(stiff)]), film: measure(30) });
    const matt = last([grey, lean])!;
    const varnished = last([grey, lean, layer('varnish', 'v')])!;
    expect(varnished.lab[0]).toBeLessThan(matt.lab[0]);
    const included = { value: 'included' as const, place };
    const excluded = { value: 'excluded' as const, place };
    expect(last([grey, lean], { studio: { specular: excluded } })!.lab[0]).toBeLessThan(
      last([grey, lean], { studio: { specular: included } })!.lab[0],
    );
  });

  it('under lamp light reds gain: the colour shown is what would look so under D65', () => {
    const lamp = last([grey, glaze('a')], { studio: { lightSource: { value: 'A', place } } })!;
    const day = last([grey, glaze('a')])!;
    expect(lamp.lab[0]).toBeGreaterThan(day.lab[0]);
    // a grey stays grey under any lamp one is adapted to
    expect(
      Math.hypot(...last([grey], { studio: { lightSource: { value: 'A', place } } })!.lab.slice(1)),
    ).toBeLessThan(2);
  });

  it('measures how far a target is missed', () => {
    const targets = [
      { in: area('all'), colour: { css: '#808080', place, valid: true }, within: measure(3), place },
    ];
    const on = (layers: readonly Layer[]) => study(plan(layers, { targets })).areas[0]!.target()!;
    expect(on([grey]).deltaE00).toBeLessThan(0.1);
    expect(on([grey, glaze('a')])).toMatchObject({ within: 3, css: '#808080' });
    expect(on([grey, glaze('a')]).deltaE00).toBeGreaterThan(10);
    expect(on([]).deltaE00).toBeUndefined();
  });

  it('tells what lies beneath a layer, for matching', () => {
    const result = study(plan([grey, glaze('a')]));
    const before = result.beneath('all', 1)!.reflectance;
    const after = result.beneath('all')!.reflectance;
    expect(after[0]!).toBeLessThan(before[0]!);
    expect(result.beneath('nowhere')).toBeUndefined();
  });
});

describe('what if', () => {
  const result = study(plan([grey, glaze('a')]));
  it('the layer as it stands gives what the study gives', () => {
    const same = colourWith(result, result.plan.layers[1]!, 'all')!;
    const { lab, radius, hex } = result.layers[1]!.colours()[0]!;
    expect(same).toMatchObject({ lab, radius, hex });
    expect(compositionOf(result.plan.layers[1]!)).toEqual(result.layers[1]!.composition);
  });
  it('a thicker film would be darker', () => {
    const thicker = { ...result.plan.layers[1]!, film: measure(20) };
    expect(colourWith(result, thicker, 'all')!.lab[0]).toBeLessThan(result.layers[1]!.colours()[0]!.lab[0]);
    expect(colourWith(result, thicker, 'nowhere')).toBeUndefined();
  });
});

describe('an edit', () => {
  const build = (film: number) =>
    plan(
      Array.from({ length: 20 }, (_, i) =>
        i === 0 ? grey : glaze(`g${i}`, { film: measure(i === 12 ? film : 2 + i / 10) }),
      ),
    );
  const colours = (p: ReturnType<typeof build>, memo = createStudyMemo()) =>
    study(p, memo)
      .areas[0]!.buildUp()
      .map((b) => b.colour.lab);

  it('costs the layers on it and no others', () => {
    const memo = createStudyMemo();
    const first = colours(build(3), memo);
    const second = colours(build(4), memo);
    // remembered colours are the same objects
    expect(second.map((lab, i) => lab === first[i])).toEqual(Array.from({ length: 20 }, (_, i) => i < 12));
  });
  it('gives what a fresh study gives', () => {
    const memo = createStudyMemo();
    colours(build(3), memo);
    expect(colours(build(4), memo)).toEqual(colours(build(4)));
  });
});
