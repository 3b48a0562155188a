/** The chain of colours on a made-up pair of pigments: the laws it keeps, whatever the shipped data say. */
import { describe, expect, it, vi } from 'vitest';
import { sentBack } from '../../language/src/optics/transport.ts';
import { createStudyMemo } from '../../language/src/study/build.ts';
import { colourWith, compositionOf } from '../../language/src/study/what-if.ts';
import { planned, studied } from '../plan/text.ts';

vi.mock('../../language/src/optics/data.ts', () => {
  const band = (f: (i: number) => number) => Float64Array.from({ length: 31 }, (_, i) => f(i));
  const table = new Map([
    // a scattering white and a clear red
    [
      'PW6',
      { a: band(() => 0.001), s: band(() => 1.6), confidence: 'A', residual: 1, basis: 'made up, white' },
    ],
    [
      'PR177',
      {
        a: band((i) => (i < 18 ? 0.8 : 0.008)),
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

const HEAD = `support linen 40 x 50 cm
paint white = PW6 in linseed
paint red = PR177 in linseed
paint stiff = PR177 in linseed 40 % oil
medium oil-alone = 100 % walnut
`;
const GREY = 'ground grey { colour #808080 }\n';
const glaze = (name: string, film = '8', more = '') =>
  `glaze ${name} { colour red   medium 60 % oil-alone   film ${film} µm   ${more} }\n`;
/** A text of layers, over one area where `head` declares none. */
const text = (layers: string, head = '', kind = 'plan') =>
  `${kind} "Test"\n${HEAD}${/^area /m.test(head) ? '' : 'area all 100 %\n'}${head}\n${layers}`;
const of = (layers: string, head?: string, kind?: string) => studied(text(layers, head, kind));
const last = (layers: string, head?: string, kind?: string) =>
  of(layers, head, kind).areas[0]!.buildUp().at(-1)?.colour;

describe('predicted colours', () => {
  it('a stated colour is what it says, and certain', () => {
    const seen = last(GREY)!;
    expect(seen.hex).toBe('#808080');
    expect(seen.confidence).toBe('A');
    expect(seen.radius).toBeLessThanOrEqual(1);
  });

  it('a glaze darkens and colours; a body colour hides', () => {
    const [under, over, hidden] = [
      last(GREY)!,
      last(GREY + glaze('a'))!,
      last(`${GREY}layer w { colour white   film 200 µm }`)!,
    ];
    expect(over.lab[0]).toBeLessThan(under.lab[0]);
    expect(over.lab[1]).toBeGreaterThan(20);
    expect(hidden.lab[0]).toBeGreaterThan(90);
  });

  it('three coats are one film of three times the thickness', () => {
    const coats = last(GREY + glaze('a', '5', 'coats 3'))!;
    const thick = last(GREY + glaze('a', '15'))!;
    const three = last(GREY + glaze('a', '5') + glaze('b', '5') + glaze('c', '5'))!;
    for (const i of [0, 1, 2] as const) {
      expect(coats.lab[i]).toBeCloseTo(thick.lab[i], 9);
      expect(three.lab[i]).toBeCloseTo(thick.lab[i], 6);
    }
  });

  it('wiping out leaves a quarter of the film, there and nowhere else', () => {
    const result = of(GREY + glaze('a', '8', 'wipe-out left'), 'area left 50 %\narea right 50 %');
    const [left, right] = ['left', 'right'].map(
      (name) => result.layers[1]!.colours().find((c) => c.area === name)!,
    );
    const quarter = last(GREY + glaze('a', '2'))!;
    for (const i of [0, 1, 2] as const) expect(left!.lab[i]).toBeCloseTo(quarter.lab[i], 9);
    expect(right!.lab[1]).toBeGreaterThan(left!.lab[1]);
    expect(left!.radius).toBeGreaterThan(quarter.radius);
  });

  it('is less sure of a film that may be anything from thin to thick, and of what rests on worse data', () => {
    const sure = last(GREY + glaze('a', '8'))!;
    const vague = last(GREY + glaze('a', '3..20'))!;
    expect(vague.radius).toBeGreaterThan(sure.radius);
    expect(sure.confidence).toBe('B');
    expect(sure.basis.join()).toContain('made up, red');
  });

  it('what is unknown is transparent and said to be so; what has no data is left out and said to be so', () => {
    const veiled = last(`${GREY}glaze veil { colour unknown }`, '', 'record')!;
    expect(veiled.lab).toEqual(last(GREY, '', 'record')!.lab);
    expect(veiled.radius).toBeGreaterThan(10);
    expect(veiled.basis.join()).toContain('veil unknown');
    const lost = last(`${GREY}glaze b { colour PB29   film 8 µm }`)!;
    expect(lost.confidence).toBe('D');
    expect(lost.radius).toBeGreaterThan(10);
    expect(lost.basis.join()).toContain('no optical data');
  });

  it('predicts nothing above what cannot be known, until something covers it', () => {
    const result = of(`${GREY}glaze broken { colour nothing }\n${glaze('a')}layer cover { colour #ffffff }`);
    expect(result.layers.map((l) => l.colours().length)).toEqual([1, 0, 0, 1]);
  });

  it('a varnish brings depth back to a matt film; the plan may say how colours are compared', () => {
    const lean = `${GREY}underlayer u { colour stiff   film 30 µm }\n`;
    const matt = last(lean)!;
    const varnished = last(`${lean}varnish v {}`)!;
    expect(varnished.lab[0]).toBeLessThan(matt.lab[0]);
    expect(last(lean, 'studio { specular excluded }')!.lab[0]).toBeLessThan(
      last(lean, 'studio { specular included }')!.lab[0],
    );
  });

  it('under lamp light reds gain: the colour shown is what would look so under D65', () => {
    const lamp = last(GREY + glaze('a'), 'studio { light-source A }')!;
    const day = last(GREY + glaze('a'))!;
    expect(lamp.lab[0]).toBeGreaterThan(day.lab[0]);
    // a grey stays grey under any lamp one is adapted to
    expect(Math.hypot(...last(GREY, 'studio { light-source A }')!.lab.slice(1))).toBeLessThan(2);
  });

  it('measures how far a target is missed', () => {
    const on = (layers: string) => of(`${layers}target all #808080 within 3`).areas[0]!.target()!;
    expect(on(GREY).deltaE00).toBeLessThan(0.1);
    expect(on(GREY + glaze('a'))).toMatchObject({ within: 3, css: '#808080' });
    expect(on(GREY + glaze('a')).deltaE00).toBeGreaterThan(10);
    expect(on('').deltaE00).toBeUndefined();
  });

  it('tells what lies beneath a layer, for matching', () => {
    const result = of(GREY + glaze('a'));
    const before = sentBack(result.beneath('all', 1)!.stack);
    const after = sentBack(result.beneath('all')!.stack);
    expect(after[0]!).toBeLessThan(before[0]!);
    expect(result.beneath('nowhere')).toBeUndefined();
  });
});

describe('what if', () => {
  const result = of(GREY + glaze('a'));
  it('the layer as it stands gives what the study gives', () => {
    const same = colourWith(result, result.plan.layers[1]!, 'all')!;
    const { lab, radius, hex } = result.layers[1]!.colours()[0]!;
    expect(same).toMatchObject({ lab, radius, hex });
    expect(compositionOf(result.plan.layers[1]!)).toEqual(result.layers[1]!.composition);
  });
  it('a thicker film would be darker', () => {
    const thicker = { ...result.plan.layers[1]!, film: planned(text(glaze('a', '20'))).layers[0]!.film };
    expect(colourWith(result, thicker, 'all')!.lab[0]).toBeLessThan(result.layers[1]!.colours()[0]!.lab[0]);
    expect(colourWith(result, thicker, 'nowhere')).toBeUndefined();
  });
});

describe('an edit', () => {
  const build = (film: number) =>
    text(
      Array.from({ length: 20 }, (_, i) =>
        i === 0 ? GREY : glaze(`g${i}`, `${i === 12 ? film : 2 + i / 10}`),
      ).join(''),
    );
  const colours = (plan: string, memo = createStudyMemo()) =>
    studied(plan, memo)
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
