/** What the runner of the rules owes to all of them: allow, severities, order, and that none takes the others down. */
import { describe, expect, test, vi } from 'vitest';
import { readPlan } from '../../language/src/plan/read.ts';
import { type CheckSettings, findings } from '../../language/src/rules/check.ts';
import { rules } from '../../language/src/rules/index.ts';
import { study } from '../../language/src/study/build.ts';

const uri = 'file:///x.paintplan';
const check = (text: string, settings: CheckSettings = {}) => {
  const plan = readPlan(text, uri);
  return findings(plan, study(plan), settings);
};
const ids = (text: string, settings?: CheckSettings) => check(text, settings).map((f) => f.rule);

const milky = (more = '', head = '') => `plan "x"
support linen 40 x 50 cm
${head}
underlayer grey { colour 1 PW6 + 1 PBk9 }
glaze mist {
  colour 3 PB29 + 1 PW6
  medium 60 % stand-oil
  film 6 µm
  ${more}
}
glaze haze {
  colour 3 PB29 + 1 PW6
  medium 60 % stand-oil
  film 6 µm
}
`;
const WHITE = 'opaque-white-in-glaze';

describe('allow', () => {
  test('on a layer silences one rule there and nowhere else', () => {
    expect(ids(milky()).filter((id) => id === WHITE)).toHaveLength(2);
    const found = check(milky(`allow ${WHITE} because "mist"`));
    expect(found.filter((f) => f.rule === WHITE).map((f) => f.layer)).toEqual([2]);
    expect(found.filter((f) => f.rule === 'oily-rags')).toHaveLength(1);
  });
  test('for the whole plan silences it everywhere, and is needed', () => {
    const found = ids(milky('', `allow ${WHITE} because "mist"`));
    expect(found).not.toContain(WHITE);
    expect(found).not.toContain('unneeded-allow');
  });
  test('of a rule that did not run is not called unneeded', () => {
    const text = milky('allow glaze-invisible because "x"');
    expect(ids(text)).toContain('unneeded-allow');
    expect(ids(text, { colour: false })).not.toContain('unneeded-allow');
  });
  test('of no rule names the nearest', () => {
    const [found] = check(milky('allow opaque-white-in-glase because "x"')).filter(
      (f) => f.rule === 'unknown-rule',
    );
    expect(found?.message).toContain(`‘${WHITE}’`);
    expect(found?.fixes[0]?.edits[0]?.text).toBe(WHITE);
  });
  test('hides no fault of reading', () => {
    expect(ids('plan "x"\nallow syntax because "x"\nlayer first { film }\n')).toContain('syntax');
  });
});

describe('severities', () => {
  test('are set by rule, or off', () => {
    expect(check(milky(), { severities: { [WHITE]: 'hint' } }).filter((f) => f.rule === WHITE)).toMatchObject(
      [{ severity: 'hint' }, { severity: 'hint' }],
    );
    expect(ids(milky(), { severities: { [WHITE]: 'off' } })).not.toContain(WHITE);
  });
});

test('findings come in order of their place, none twice', () => {
  const found = check(milky('film 7 µm\n film 7 µm'));
  expect(found.map((f) => f.place.start)).toEqual(found.map((f) => f.place.start).toSorted((a, b) => a - b));
  expect(new Set(found.map((f) => `${f.rule} ${f.place.start} ${f.message}`)).size).toBe(found.length);
});

test('the typing path runs no rule that needs colours', () => {
  const coloured = new Set(rules.filter((r) => r.needsColour).map((r) => r.id));
  expect(coloured.size).toBeGreaterThan(4);
  const text = `plan "x"\narea all 100 %\nlayer g { colour #777777 }\ntarget all #ff0000\n`;
  expect(ids(text)).toContain('target-missed');
  expect(ids(text, { colour: false }).filter((id) => coloured.has(id))).toEqual([]);
});

test('a rule that throws is told once and leaves the others be; in tests it is thrown', () => {
  const rule = rules.find((r) => r.id === 'oily-rags');
  if (!rule) throw new Error('no such rule');
  const broken = vi.spyOn(rule, 'check').mockImplementation(() => {
    throw new Error('out of order');
  });
  try {
    const found = check(milky());
    expect(found.filter((f) => f.message.includes('out of order'))).toMatchObject([{ severity: 'info' }]);
    expect(found.map((f) => f.rule)).toContain(WHITE);
    expect(() => check(milky(), { strict: true })).toThrow('out of order');
  } finally {
    broken.mockRestore();
  }
});
