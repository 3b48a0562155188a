/**
 * Characters that a reader obeys instead of showing: control codes (ECMA-48), direction marks (UAX #9, section 2), what
 * begins a block in Markdown (CommonMark 0.31, sections 4 and 5; markdown-it reads it), and lines that are commands to
 * a service which reads what a pipeline prints. None of them reaches one from a plan or a file's name.
 */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { hover } from '../../language/src/features/hover.ts';
import { buildReport } from '../../language/src/report/build.ts';
import { htmlReport } from '../../language/src/report/html.ts';
import { markdownReport } from '../../language/src/report/markdown.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { calendarIcs } from '../../language/src/study/calendar-ics.ts';
import { run } from '../cli/run.ts';

const codes = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCharCode(from + i));
const CONTROL = [...codes(0, 0x1f), ...codes(0x7f, 0x9f)].filter((c) => !'\t\n\r'.includes(c));
const DIRECTION = ['\u061c', '\u200e', '\u200f', ...codes(0x202a, 0x202e), ...codes(0x2066, 0x2069)];
/** All of them between letters. */
const WORDS = `${[...CONTROL, ...DIRECTION].join('a')}\u001b[2J\ud800`;
const OBEYED =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]|[\ud800-\udbff](?![\udc00-\udfff])/;

const plan = (words: string) => `plan "${words}"
support linen 24 x 30 cm
start 2027-01-11
note "${words}"
/// ${words}
area sky 50 %
ground priming { material acrylic }
/// ${words}
underlayer grey { on sky   colour PBk9   film thin   note "${words}"   evidence "${words}" }
glaze yellow { on sky   colour PY150   medium 50 % stand-oil   allow not-ready because "${words}" }
`;
const record = (words: string) =>
  `record "${words}"\nlayer a { colour PB29 in linseed   evidence "${words}" }\nsample "${words}" in everything { a 10 µm }\n`;

function made(text: string) {
  const { plan: read, study, findings } = createAnalyser()(text, 'file:///stranger.paintplan');
  return { read, study, report: buildReport(study, findings(), () => '1:1') };
}

test.each([
  ['the page', (w: string) => htmlReport(made(plan(w)).report)],
  ['the page of a record', (w: string) => htmlReport(made(record(w)).report)],
  ['a drawing', (w: string) => sectionDrawing(made(record(w)).study)?.markup ?? ''],
  ['Markdown', (w: string) => markdownReport(made(plan(w)).report, 'a').text],
  ['the calendar', (w: string) => calendarIcs(made(plan(w)).study).replaceAll('\r\n', '\n')],
  [
    'a hover',
    (w: string) => {
      const { read, study } = made(plan(w));
      return hover(read, study, (read.text ?? '').indexOf('grey') + 1)?.markdown ?? '';
    },
  ],
])('%s shows them as marks', (_, of) => {
  expect(of('plain words')).toMatch(/plain words|grey/);
  const text = of(WORDS);
  expect(text).not.toMatch(OBEYED);
  if (_ !== 'a hover' || /plain/.test(of('plain words'))) expect(text).toContain('\ufffda\ufffd');
});

test.each([
  ['check', '--format', 'text'],
  ['check', '--format', 'json'],
  ['check', '--format', 'sarif'],
  ['check', '--format', 'github'],
  ['study', '--format', 'text'],
  ['study', '--format', 'json'],
  ['report', '--to', 'html'],
  ['report', '--to', 'md'],
  ['report', '--to', 'json'],
  ['report', '--to', 'csv'],
  ['report', '--to', 'card'],
  ['format', '--check'],
])('%s %s %s: neither in what is printed nor in what is said', async (command, ...options) => {
  const folder = mkdtempSync(join(tmpdir(), 'paintplan-characters-'));
  const path = join(folder, `\u001b[2J\u202e\u009b${'\n::error::forged'}.paintplan`);
  writeFileSync(path, `${plan(WORDS.replaceAll('\ud800', ''))}glaze   odd { colour PB99 }\n`);
  const { out, err } = await run(command, path, ...options);
  expect((out + err).replaceAll('\r\n', '\n')).not.toMatch(OBEYED);
  expect(out + err).not.toMatch(/^\s*::error::forged/m);
  rmSync(folder, { recursive: true });
});

describe('a Markdown report keeps its structure', () => {
  const reader = createRequire(import.meta.url)('markdown-it')() as {
    parse(text: string, env: object): { readonly type: string; readonly tag: string }[];
    render(text: string): string;
  };
  const structure = (words: string) =>
    reader.parse(markdownReport(made(plan(words)).report, 'a').text, {}).map((t) => `${t.type} ${t.tag}`);

  test.each([
    '---',
    '- - -',
    '***',
    '===',
    '- item',
    '+ item',
    '* item',
    '-',
    '1. item',
    '1) item',
    '123456789. item',
    '1.',
    '    code',
    '\tcode',
    '-     code',
    '# heading',
    '> quoted',
    '``` code',
    '~~~ code',
    '<div>',
    '[a]: http://example.invalid',
    '| a | b |',
    '::error::forged',
    'ends in a stroke \\',
  ])('with %j', (words) => {
    expect(structure(words)).toEqual(structure('words'));
    // and the words are those of the plan
    const text = reader.render(markdownReport(made(plan(words)).report, 'a').text);
    const escaped = words.trim().replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
    expect(text).toContain(`<p>${escaped}</p>`);
  });

  test('whatever the plan’s file is called', () => {
    const { text, drawings } = markdownReport(made(plan('words')).report, 'a) [b] #c?d "e" %f');
    const html = reader.render(text);
    const linked = [...html.matchAll(/<img src="([^"]+)"/g)].map((m) => decodeURIComponent(m[1] as string));
    expect(linked.length).toBeGreaterThan(0);
    expect(linked).toEqual([...drawings.keys()]);
  });
});

describe('lines that are commands to a service', () => {
  let place: string;
  beforeAll(() => {
    place = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-commands-')));
    return () => rmSync(place, { recursive: true, force: true });
  });
  const COMMAND = /^\s*::|##\[/m;

  test('are made of no file’s name, whatever it is asked', async () => {
    const odd = join(place, 'a\n::error file=x::forged\r::warning::too ##[error]three');
    mkdirSync(odd);
    const text = 'plan "A"\nground g1   { material acrylic }\nglaze a { colour PB99 }\n';
    writeFileSync(join(odd, 'b\n::error::forged.paintplan'), text);
    writeFileSync(join(odd, 'c.paintplan'), Buffer.from([0x80]));
    for (const args of [
      ['check', place],
      ['check', place, '--format', 'json'],
      ['format', '--check', place],
      ['report', place, '--to', 'html', '--out', join(place, 'out/')],
      ['report', place, '--to', 'ics', '--out', join(place, 'out/')],
      ['compare', join(odd, 'b\n::error::forged.paintplan'), join(odd, 'c.paintplan')],
      ['check', join(odd, 'gone\n::error::forged')],
      ['check', '--\n::error::forged'],
      ['check', place, '--rule', '\n::error::forged'],
      ['\n::error::forged'],
      ['explain', '\n::error::forged'],
    ]) {
      const { out, err } = await run(...args);
      expect(out + err, args.join(' ')).not.toMatch(COMMAND);
    }
    const { out } = await run('check', place, '--format', 'github');
    for (const line of out.trimEnd().split('\n')) expect(line).toMatch(/^::error file=[^,:]+,line=\d+/);
  });

  test('are made of no words of a plan, wherever a line is folded', async () => {
    const path = join(place, 'words.paintplan');
    for (let n = 0; n < 40; n++) {
      const words = `${'x'.repeat(n)} ::error::forged ::error::forged ##[error]forged`;
      writeFileSync(
        path,
        `plan "::error::forged"\nnote "${words}"\nglaze a { colour PB99   note "${words}" }\n`,
      );
      for (const args of [
        ['study', path],
        ['report', path, '--to', 'md'],
      ])
        expect((await run(...args)).out.replaceAll('\\#\\#\\[', ''), args[0]).not.toMatch(COMMAND);
    }
  });
});
