/** The public contract of the command line: exit codes, formats, messages. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { parse as parseCsv } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'paintplan-'));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const sound = 'examples/still-life.paintplan';
const faulty = 'examples/faulty/slips.paintplan';

describe('exit codes', () => {
  test.each([
    [0, ['check', sound]],
    [1, ['check', faulty]],
    [0, ['check', 'examples/first-plan.paintplan', '--max-warnings', '0']],
    [1, ['check', 'examples/faulty/white-in-glaze.paintplan', '--max-warnings', '0']],
    [2, ['check', 'no-such-file.paintplan']],
    [2, ['check']],
    [2, ['check', sound, '--format', 'xml']],
    [2, ['check', sound, '--rule', 'no-such-rule=off']],
    [2, ['check', sound, '--rule', 'oily-rags=loud']],
    [2, ['check', sound, '--max-warnings', 'many']],
    [2, ['no-such-command']],
    [0, ['study', sound]],
    [1, ['study', faulty]],
    [2, ['study', 'examples']],
    [0, ['explain', 'PB29']],
    [0, ['explain', 'PBr7', 'burnt-sienna']],
    [0, ['explain', 'lean-over-fat']],
    [0, ['explain', 'turpentine']],
    [2, ['explain', 'mayonnaise']],
    [0, ['format', sound, '--check']],
    [0, ['compare', sound, sound]],
    [1, ['compare', sound, 'examples/night-harbour.paintplan']],
    [2, ['report', sound]],
    [0, ['--help']],
    [0, ['--version']],
  ] as const)('%i for %j', async (code, args) => {
    expect((await run(...args)).code).toBe(code);
  });
});

test('a rule can be silenced or made grave from outside', async () => {
  const white = 'examples/faulty/white-in-glaze.paintplan';
  expect((await run('check', white, '--rule', 'opaque-white-in-glaze=error')).code).toBe(1);
  expect((await run('check', white, '--rule', 'opaque-white-in-glaze=off')).out).not.toMatch(/milky/);
});

test('messages name file, line and what to do', async () => {
  const { out } = await run('check', faulty);
  expect(out).toMatch(/slips\.paintplan\n/);
  expect(out).toMatch(/10:64\s+error\s+out-of-range\n\s+A film for ‘first’ of 3 mm/);
  expect(out).toMatch(/Did you mean ‘right’\?/);
  const missing = await run('check', 'gone.paintplan');
  expect(missing.err).toMatch(/There is no file gone\.paintplan/);
});

test('check --format json has the stated shape', async () => {
  const { out } = await run('check', faulty, sound, '--format', 'json');
  const schema = JSON.parse(readFileSync('language/docs/check.schema.json', 'utf8'));
  const validate = new Ajv({ strict: false }).compile(schema);
  expect(validate(JSON.parse(out)), JSON.stringify(validate.errors)).toBe(true);
});

test('check --format github: one command a finding, nothing that could break out of it', async () => {
  const { out } = await run('check', faulty, '--format', 'github');
  for (const line of out.trim().split('\n'))
    expect(line).toMatch(
      /^::(error|warning|notice) file=[^,]+,line=\d+,endLine=\d+(,col=\d+,endColumn=\d+)?,title=[^:]+::.+/,
    );
});

test('check --format sarif follows SARIF 2.1.0', async () => {
  const { out } = await run('check', faulty, '--format', 'sarif');
  const log = JSON.parse(out);
  expect(log.version).toBe('2.1.0');
  const ids = log.runs[0].tool.driver.rules.map((r: { id: string }) => r.id);
  for (const r of log.runs[0].results) {
    expect(['error', 'warning', 'note']).toContain(r.level);
    if (r.ruleIndex !== undefined) expect(ids[r.ruleIndex]).toBe(r.ruleId);
    expect(r.locations[0].physicalLocation.region.startLine).toBeGreaterThan(0);
  }
});

test('standard input is -', () => {
  const out = execFileSync(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      "import { main } from './language/src/cli/main.ts'; process.exitCode = await main(['check', '-']);",
    ],
    {
      input: 'plan "Blue"\nglaze blue { colour PB29 }\n',
      encoding: 'utf8',
    },
  );
  expect(out).toMatch(/standard input/);
});

describe('reports', () => {
  test('html is one page without script or outside address', async () => {
    const { out } = await run('report', sound, '--to', 'html');
    expect(out).toMatch(/^<!DOCTYPE html>/);
    expect(out).not.toMatch(/<script|src="http|url\(http/);
    for (const heading of [
      'Layers, from the support upwards',
      'Calendar',
      'Materials',
      'Cautions',
      'Sources',
    ])
      expect(out).toContain(heading);
  });

  test('a plan’s words never become markup', async () => {
    const path = file(
      'evil.paintplan',
      'plan "<script>alert(1)</script>"\n/// <img src=x onerror=alert(1)>\nglaze x { colour PB29   note "</style><b>" }\nglaze y { colour PB29   allow glaze-hides because "![a](javascript:b)" }\n',
    );
    for (const kind of ['html', 'md', 'svg']) {
      const { out } = await run('report', path, '--to', kind);
      expect(out, kind).not.toMatch(/<script|<img|<b>/);
      if (kind === 'md') expect(out).not.toMatch(/[^\\]!\[a\]|[^\\]\]\(javascript/);
    }
  });

  test('calendar reads back', async () => {
    const { out } = await run('report', sound, '--to', 'ics');
    const [name, , events] = ICAL.parse(out) as unknown as [string, unknown, unknown[]];
    expect(name).toBe('vcalendar');
    expect(events.length).toBeGreaterThan(8);
    expect((await run('report', sound, '--to', 'ics')).out).toBe(out);
  });

  test('materials list reads back', async () => {
    const rows = parseCsv((await run('report', sound, '--to', 'csv')).out, { columns: true }) as Record<
      string,
      string
    >[];
    expect(rows.length).toBeGreaterThan(8);
  });

  test('Markdown comes with its drawings', async () => {
    const out = join(folder, 'reports/');
    expect(
      (await run('report', sound, 'examples/old-panel.paintplan', '--to', 'md', '--out', out)).code,
    ).toBe(0);
    const text = readFileSync(join(out, 'still-life.md'), 'utf8');
    for (const [, drawing] of text.matchAll(/\]\(([^)]+\.svg)\)/g))
      expect(readFileSync(join(out, drawing as string), 'utf8')).toMatch(/^<svg /);
    expect(readFileSync(join(out, 'old-panel.md'), 'utf8')).toMatch(/Layer structure/);
  });
});

test('compare tells layers, figures, colours and findings', async () => {
  const before = file(
    'a.paintplan',
    'plan "A"\nunderlayer one { colour 3 PW6 + 1 PBk9   film 20 µm }\nglaze two { colour PB29   medium 50 % stand-oil   film 8 µm }\n',
  );
  const after = file(
    'b.paintplan',
    '// moved\nplan "A"\nunderlayer one { colour 3 PW6 + 1 PBk9   film 20 µm }\nglaze two { colour PB29 + PW6   medium 50 % stand-oil   film 8 µm }\nglaze three { colour PG7   medium 60 % stand-oil   film 5 µm }\n',
  );
  const { out, code } = await run('compare', before, after, '--format', 'json');
  const found = JSON.parse(out);
  expect(code).toBe(1);
  expect(found.layers.added).toEqual(['three']);
  expect(found.layers.changed[0].layer).toBe('two');
  expect(found.colours[0].deltaE00).toBeGreaterThan(1);
  expect(found.findings.gained.join()).toMatch(/opaque-white-in-glaze/);
  const moved = file(
    'c.paintplan',
    '\n\n// only spaces and words of comment\nplan "A"\nunderlayer one { film 20 µm   colour 3 PW6 + 1 PBk9 }\nglaze two { colour PB29   medium 50 % stand-oil   film 8 µm }\n',
  );
  expect((await run('compare', before, moved)).code).toBe(0);
});

describe('Markdown notes', () => {
  const note = `# Note\n\n\`\`\`paintplan\nplan "Pear"\nground priming { material acrylic }\nglaze warm { colour PB99 }\n\`\`\`\n\n\`\`\`paintplan\nplan "Two"\nunderlayer grey { colour 3 PW6 + 1 PBk9 }\n\`\`\`\n\n<!-- paintplan layers -->\nold\n<!-- paintplan end -->\n\n<!-- paintplan section of "pear.paintplan" -->\n<!-- paintplan end -->\n`;

  test('fenced plans are checked where they stand', async () => {
    const { out, code } = await run('check', file('note.md', note), '--format', 'json');
    const found = JSON.parse(out).files;
    expect(found).toHaveLength(1);
    expect(found[0].findings.find((f: { rule: string }) => f.rule === 'unknown-pigment').range.start).toEqual(
      { line: 6, column: 21 },
    );
    expect(code).toBe(1);
  });

  test('marked places are filled, and filled again without change', async () => {
    file('pear.paintplan', 'plan "Pear"\nground priming { material acrylic }\n');
    const path = file('note.md', note);
    expect((await run('report', path, '--to', 'md', '--out', path)).code).toBe(0);
    const once = readFileSync(path, 'utf8');
    expect(once).toMatch(/\| 1 \| underlayer grey \|/);
    expect(once).not.toMatch(/old/);
    const drawing = /\]\(([^)]+\.svg)\)/.exec(once)?.[1] as string;
    expect(readFileSync(join(folder, drawing), 'utf8')).toMatch(/^<svg /);
    await run('report', path, '--to', 'md', '--out', path);
    expect(readFileSync(path, 'utf8')).toBe(once);
    const bad = await run(
      'report',
      file('bad.md', '<!-- paintplan layers -->\n<!-- paintplan end -->\n'),
      '--to',
      'md',
    );
    expect([bad.code, bad.err]).toEqual([
      1,
      expect.stringMatching(/bad\.md:1: There is no plan fenced above/),
    ]);
  });
});

test('match proposes whole parts, or says what limits them', async () => {
  const path = file(
    'match.paintplan',
    'plan "M"\nsupport linen 30 x 40 cm\npaint white = PW6 in linseed\npaint ochre = PY43 in linseed\npaint blue = PB29 in linseed\nmix body = 5 ochre + 2 white target lab(70 3 28) within 4\nground priming { material acrylic }\nlayer body-colour { colour body   film 30 µm }\n',
  );
  const found = await run('match', path, '--mix', 'body', '--format', 'json');
  const match = JSON.parse(found.out);
  expect(found.code).toBe(match.reachable ? 0 : 1);
  expect(match.recipes[0].deltaE00).toBeLessThan(8);
  for (const r of match.recipes)
    for (const p of r.parts) expect(Number.isInteger(p.parts) && p.parts >= 1 && p.parts <= 20).toBe(true);
  const red = await run('match', path, '--target', '#e00020');
  expect([red.code, red.out]).toEqual([1, expect.stringMatching(/Not reached\. \S+/)]);
  expect((await run('match', path, '--mix', 'nothing')).code).toBe(2);
  expect((await run('match', path, '--target', 'mauve')).code).toBe(2);
  expect((await run('match', path)).code).toBe(2);
});

describe('match --through', () => {
  const text = `// Invented.
plan "Bottle"
start 2027-01-04
support hardboard 40 x 30 cm
area bottle 40 %
area wall 60 %
paint white = PW6 in linseed
paint black = PBk9 in linseed
paint rust = PR101 transparent in linseed
medium rich = 20 % turpentine + 80 % stand-oil
ground priming { material acrylic   wait 14 days }
underlayer grisaille { colour 6 white + 1 black   film 20 µm   wait 4 weeks }
glaze warm { on bottle   prepare abrade   colour rust   medium 60 % rich   film 4 µm }
target bottle lab(52 24 28) within 5
`;
  const sought = (path: string, ...more: string[]) =>
    run('match', path, '--through', 'grisaille,warm', ...more);

  test('tells ways, and writes the one that is chosen', async () => {
    const path = file('through.paintplan', text);
    const told = await sought(path);
    expect([told.code, told.out]).toEqual([
      0,
      expect.stringMatching(/1 {2}grey beneath|1 {2}colour beneath/),
    ]);
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const { ways, reachable } = JSON.parse((await sought(path, '--format', 'json')).out);
    expect(reachable).toBe(true);
    expect(ways[0].layers.map((l: { layer: string }) => l.layer)).toContain('warm');
    expect(readFileSync(path, 'utf8')).toBe(text);
    const written = await sought(path, '--write', '1');
    expect([written.code, written.err]).toEqual([0, expect.stringMatching(/way 1 written/)]);
    const after = JSON.parse((await run('study', path, '--format', 'json')).out);
    const area = after.areas.find((a: { name: string }) => a.name === 'bottle');
    expect(area.target.deltaE00).toBeCloseTo(ways[0].deltaE00, 2);
  });

  test.each([
    [['--write', '9'], /There are only \d ways/],
    [['--area', 'wall'], /do not all lie on wall/],
    [['--area', 'sea'], /There is no area ‘sea’/],
    [['--by', 'soon'], /‘soon’ is no date/],
    [['--mix', 'body'], /--mix does not go with --through/],
    [['--target', 'mauve'], /‘mauve’ is no colour/],
  ])('refuses %j, and leaves the plan as it is', async (options, why) => {
    const path = file('through-not.paintplan', text);
    const { code, err } = await sought(path, ...options);
    expect([code, err]).toEqual([2, expect.stringMatching(why)]);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  test('says what is missing', async () => {
    const path = file('through-none.paintplan', text.replace(/^target.*\n/m, ''));
    expect((await sought(path)).err).toMatch(/Nothing is wanted of bottle: give --target COLOUR/);
    expect((await run('match', path, '--through', 'cold')).err).toMatch(/no layer ‘cold’/);
    expect((await run('match', path, '--target', '#888', '--coats', '2')).err).toMatch(
      /--coats goes with --through/,
    );
  });
}, 120_000);

test('a note keeps every word outside its plans when it is formatted', async () => {
  const path = file(
    'messy.md',
    '# Title\n\n* a   list\n\n```paintplan\nplan   "A"\narea sky 50%\n```\n\nlast  words\n\n~~~paintplan\nplan "B"\narea   sea 20 %\n~~~\n',
  );
  await run('format', path);
  expect(readFileSync(path, 'utf8')).toBe(
    '# Title\n\n* a   list\n\n```paintplan\nplan "A"\narea sky 50 %\n```\n\nlast  words\n\n~~~paintplan\nplan "B"\narea sea 20 %\n~~~\n',
  );
});

test('several plans never go into one file', async () => {
  const note = file(
    'two.md',
    '```paintplan\nplan "A"\nground a { material acrylic }\n```\n\n```paintplan\nplan "B"\nground b { material acrylic }\n```\n',
  );
  const refused = await run('report', note, '--to', 'html', '--out', join(folder, 'one.html'));
  expect([refused.code, refused.err]).toEqual([
    2,
    expect.stringMatching(/Several plans do not go into one file/),
  ]);
  const out = join(folder, 'both/');
  expect((await run('report', note, '--to', 'html', '--out', out)).code).toBe(0);
  expect(readFileSync(join(out, 'two.html'), 'utf8')).toMatch(/<h1>A</);
  expect(readFileSync(join(out, 'two-2.html'), 'utf8')).toMatch(/<h1>B</);
});

test('match refuses paints the plan does not have', async () => {
  const path = file('from.paintplan', 'plan "M"\npaint white = PW6 in linseed\nlayer a { colour white }\n');
  const { code, err } = await run('match', path, '--target', '#888888', '--from', 'white,nope');
  expect([code, err]).toEqual([2, expect.stringMatching(/no paint ‘nope’\. The plan has white/)]);
});

describe('options that say nothing', () => {
  test.each([
    [['match', sound, '--target', '#888', '--most', '0'], /1 or more/],
    [['study', sound, faulty], /too many arguments/],
    [['study', sound, 'gone.paintplan'], /too many arguments/],
    [['match', sound, faulty, '--target', '#888'], /too many arguments/],
    [['compare', sound, sound, sound], /too many arguments/],
    [['check', sound, '--rule', 'oily-rags=off=error'], /‘off=error’ is no severity/],
    [['check', sound, '--rule', 'oily-rags=off='], /is no severity/],
    [['check', sound, '--rule', 'oily-rags'], /is no severity/],
  ] as const)('%j', async (args, said) => {
    const { code, out, err } = await run(...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(said);
  });
});

test('a chain of ‘use’ beyond its limit says which file was the last', async () => {
  for (let i = 0; i < 25; i++)
    file(`chain-${i}.paintplan`, `use "chain-${i + 1}.paintplan"\npaint p${i} = PY43 in linseed\n`);
  file('chain-25.paintplan', 'paint last = PY43 in linseed\n');
  const { out, code } = await run('check', join(folder, 'chain-0.paintplan'));
  expect(code).toBe(1);
  expect(out).toMatch(/use-missing/);
  expect(out.replace(/\s+/g, ' ')).toMatch(
    /no more than 20 files.*‘chain-20\.paintplan’ is the last that is read/,
  );
});
