import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { studyJson } from '../../language/src/study/json.ts';
import { sensible } from '../../language/src/study/sensible.ts';
import { studied } from '../plan/text.ts';

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
function valid(text: string) {
  const json = JSON.parse(JSON.stringify(studyJson(studied(text), 'a.paintplan', [finding])));
  validate(json);
  expect(validate.errors ?? []).toEqual([]);
  return json;
}

const full = (kind = 'plan', more = '') => `${kind} "Test"
${more}
support linen 40 x 50 cm
area all 100 %
studio { room 40 m³   air-changes 2 per hour }
paint white = PW6 in safflower 20 % oil
medium rich = 20 % turpentine + 20 % alkyd + 60 % walnut
ground priming { material acrylic }
layer tone { colour #8a8478 }
glaze first {
  prepare oil-out with rich
  colour 2 PBr7 burnt-sienna + 1 white
  medium 60 % rich
  film 8..12 µm
  coats 3
  wipe-out all
}
glaze broken { colour nothing }
varnish last { after 270 days }
target all #806040
`;

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
    const json = valid(full('plan', 'start 2027-01-11'));
    expect(json.calendar[1]).toMatchObject({
      notBefore: '2027-01-14',
      likely: '2027-01-25',
      safeFrom: '2027-02-10',
    });
  });
  it('of an empty plan, a palette and a record', () => {
    valid('plan "Test"\nsupport linen 40 x 50 cm\narea all 100 %');
    valid('paint white = PW6 in safflower');
    const json = valid(full('record'));
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
    const grey = 'plan "Test"\nground priming { material acrylic }\nlayer tone { colour lab(50 0 0) }';
    const text = JSON.stringify(studyJson(studied(grey), 'a.paintplan', []));
    expect(text).toMatch(/"lab":\[50,0,0\]/);
    expect(text).not.toMatch(/\de-\d|-0[,}\]]|\d\.\d{7}/);
  });
});
