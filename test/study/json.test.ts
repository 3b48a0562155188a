import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../language/src/plan/plan.ts';
import { study } from '../../language/src/study/build.ts';
import { studyJson } from '../../language/src/study/json.ts';
import { sensible } from '../../language/src/study/sensible.ts';
import {
  area,
  code,
  colour,
  day,
  formula,
  layer,
  material,
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

const schema = JSON.parse(
  readFileSync(new URL('../../language/docs/study.schema.json', import.meta.url), 'utf8'),
);
const ajv = new Ajv({ allErrors: true, allowUnionTypes: true });
addFormats.default(ajv);
const validate = ajv.compile(schema);

const at = { line: 1, column: 1 };
const finding = {
  rule: 'lean-over-fat',
  severity: 'warning',
  message: 'it may crack',
  range: { start: at, end: at },
  related: [{ message: 'over this', path: 'a.paintplan', range: { start: at, end: at } }],
  fixes: [{ title: 'take more medium', edits: [{ range: { start: at, end: at }, text: '60 %' }] }],
};

/** Through text, as a reader gets it: `undefined` and NaN do not survive that. */
function valid(of: Plan) {
  const json = JSON.parse(JSON.stringify(studyJson(study(of), 'a.paintplan', [finding])));
  validate(json);
  expect(validate.errors ?? []).toEqual([]);
  return json;
}

const white = paint('white', 'PW6', 'safflower', measure(0.2));
const rich = medium('rich', [20, 'turpentine'], [20, 'alkyd'], [60, 'walnut']);
const full = (more: Parameters<typeof plan>[1] = {}) =>
  plan(
    [
      layer('ground', 'priming', material('acrylic')),
      layer('layer', 'tone', stated('#8a8478')),
      layer('glaze', 'first', {
        ...colour([2, code('PBr7 burnt-sienna')], [1, usePaint(white)]),
        ...withMedium(0.6, rich),
        film: measure(8, 12),
        coats: measure(3),
        wipeOut: [area('all')],
        prepare: [
          { method: 'oil-out', agent: { name: 'rich', place, is: { kind: 'medium', medium: rich } }, place },
        ],
      }),
      layer('glaze', 'broken', { colour: { kind: 'formula', formula: formula([[1, unknown]]) } }),
      layer('varnish', 'last', { after: measure(270) }),
    ],
    {
      title: 'Test',
      paints: [white],
      mediums: [rich],
      visible: {
        pigments: new Map(),
        paints: new Map([['white', white]]),
        mediums: new Map([['rich', rich]]),
        mixes: new Map(),
      },
      targets: [{ in: area('all'), colour: { css: '#806040', place, valid: true }, place }],
      studio: { room: measure(40), airChanges: measure(2) },
      ...more,
    },
  );

describe('study --format json', () => {
  it('of an undated plan has no dates, and the days instead', () => {
    const json = valid(full());
    expect(json.calendar[0]).toMatchObject({
      layer: 'priming',
      coat: 1,
      notBefore: null,
      safeFrom: null,
      notBeforeDay: 0,
      safeFromDay: 0,
    });
    expect(json.calendar[1]).toMatchObject({ notBeforeDay: 3, likelyDay: 14, safeFromDay: 30 });
    expect(json.layers[2].composition.fatness.likely).toBeGreaterThan(0.3);
    expect(json.layers[3].composition).toBeNull();
    expect(json.quantities.paints.map((p: { name: string }) => p.name)).toContain('white');
  });
  it('of a dated plan has ISO dates', () => {
    const json = valid(full({ start: day('2027-01-11') }));
    expect(json.calendar[1]).toMatchObject({ notBefore: '2027-01-14', safeFrom: '2027-02-10' });
  });
  it('of an empty plan, a palette and a record', () => {
    valid(plan([]));
    valid(plan([], { kind: 'palette', areas: [], support: undefined }));
    const json = valid(full({ kind: 'record' }));
    expect(json.calendar).toEqual([]);
    expect(json.quantities).toBeNull();
  });
  it('the schema would notice: a figure that is no figure, a name that is not in it', () => {
    const json = valid(full());
    expect(validate({ ...json, layers: [{ ...json.layers[0], coats: 'three' }] })).toBe(false);
    expect(validate({ ...json, colour: 1 })).toBe(false);
  });
});

describe('figures', () => {
  it('carry no last bits of the machine: no 5e-14, no negative zero', () => {
    expect(sensible({ lab: [57.12345678, -5e-14, -0.00004], film: [8.00000000001, -0, 1e-9] })).toEqual({
      lab: [57.123, 0, 0],
      film: [8, 0, 0],
    });
    expect(JSON.stringify(sensible({ x: Number.NaN, y: -1e-17, none: undefined }))).toBe('{"x":null,"y":0}');
    const grey = plan([
      layer('ground', 'priming', material('acrylic')),
      layer('layer', 'tone', stated('lab(50 0 0)')),
    ]);
    const text = JSON.stringify(studyJson(study(grey), 'a.paintplan', []));
    expect(text).toMatch(/"lab":\[50,0,0\]/);
    expect(text).not.toMatch(/\de-\d|-0[,}\]]|\d\.\d{7}/);
  });
});
