/**
 * A plan from a stranger in everything that is made of it: whatever its words hold, they stay words. Held to by giving the
 * same plan once with harmless and once with hostile words: the markup around the words must be the same.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { chromium } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { githubFormat } from '../../language/src/cli/formats/github.ts';
import { printable } from '../../language/src/cli/paper.ts';
import { hover } from '../../language/src/features/hover.ts';
import { buildReport } from '../../language/src/report/build.ts';
import { bodyMarkup, htmlReport } from '../../language/src/report/html.ts';
import { markdownReport } from '../../language/src/report/markdown.ts';
import { escapeMarkup } from '../../language/src/report/markup.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { materialsCsv } from '../../language/src/studio/quantities.ts';
import { calendarIcs } from '../../language/src/study/calendar-ics.ts';
import { run } from '../cli/run.ts';

const HOSTILE = [
  '<script>alert(1)</script>',
  '</title></style></script><script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '<svg/onload=alert(1)>',
  ']]><script>alert(1)</script>',
  '--><script>alert(1)</script><!--',
  '[see](javascript:alert(1)) ![x](http://example.invalid/x.png)',
  '<javascript:alert(1)> <http://example.invalid/>',
  '`` ` | a | \\| b | ~~~ <details open ontoggle=alert(1)>',
  '&lt;script&gt; &#60;b&#62;',
  'javascript:alert(1)',
  '{{7*7}} ${7*7} <%= 7 %> $(id) `id`',
  "=cmd|' /C calc'!A0",
  'BEGIN:VEVENT\\nX-EVIL:1',
  '\u202egnp.exe \u0000\u0007\u001b[2J\u001b]0;owned\u0007 ::error::x',
];

const plan = (words: string) => `plan "${words}"
support linen 24 x 30 cm
start 2027-01-11
note "${words}"
allow area-unpainted because "${words}"
area sky 50 %
paint white = PW6 in linseed
ground priming { material acrylic }
underlayer grey {
  on sky
  colour 3 white + 1 PBk9
  film thin
  note "${words}"
}
glaze yellow { on sky   colour PY150 + white   medium 50 % stand-oil   note "${words}" }
`;
const record = (words: string) => `record "${words}"
support linen 24 x 30 cm
made 1650 to 1700
area sky 50 %
layer a { on sky   colour PB29 in linseed   evidence "${words}"   note "${words}" }
sample "${words}" in sky { a 10 µm }
`;

function made(text: string) {
  const { study, findings } = createAnalyser()(text, 'file:///stranger.paintplan');
  return { study, report: buildReport(study, findings(), () => '1:1') };
}

/** Tags with their attributes' names, in order; throws where a `<` begins anything else. */
function skeleton(markup: string): string[] {
  const page = markup.replace(/^<!DOCTYPE html>\n/, '').replace(/<style>[^<]*<\/style>/, '<style></style>');
  const tags: string[] = [];
  const TAG = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?: [a-zA-Z][\w:-]*="[^"<>]*")*) ?\/?>/y;
  for (let at = page.indexOf('<'); at >= 0; at = page.indexOf('<', TAG.lastIndex)) {
    TAG.lastIndex = at;
    const tag = TAG.exec(page);
    if (!tag) throw new Error(`No tag of ours at ${page.slice(at, at + 60)}`);
    const names = [...(tag[3] as string).matchAll(/ ([\w:-]+)="([^"]*)"/g)];
    for (const [, name, value = ''] of names) {
      if (/^on/i.test(name as string)) throw new Error(`An event: ${name}`);
      if (
        /^(href|src|action|formaction|xlink:href|style)$/.test(name as string) &&
        !/^(#|[\w-]+: )/.test(value)
      )
        throw new Error(`${name} leads to ${value}`);
      if (/javascript:|data:/i.test(value) && name !== 'content' && /^(href|src)$/.test(name as string))
        throw new Error(`${name} runs ${value}`);
    }
    tags.push(`${tag[1]}${tag[2]} ${names.map((n) => n[1]).join(' ')}`);
  }
  return tags;
}

/** Text in a drawing is folded by its length, so only the kinds of tags are the same there. */
const kinds = (markup: string) => [...new Set(skeleton(markup))].sort();

const texts = [plan, record];

describe.each(HOSTILE.map((words) => [words]))('%j', (words) => {
  // a quotation mark would end the words in the plan itself
  const hostile = words.replaceAll('"', "'");

  test('in the page and in the preview', () => {
    for (const text of texts) {
      expect(made(text(hostile)).report.title).toBe(hostile);
      const [harmless, bad] = [made(text('words')).report, made(text(hostile)).report];
      expect(skeleton(htmlReport(bad))).toEqual(skeleton(htmlReport(harmless)));
      // the words are there, and as words
      expect(bodyMarkup(bad).split(escapeMarkup(hostile)).length).toBeGreaterThan(1);
      expect(skeleton(bodyMarkup(bad))).toEqual(skeleton(bodyMarkup(harmless)));
    }
  });

  test('in a drawing', () => {
    const drawing = (w: string) => sectionDrawing(made(record(w)).study)?.markup ?? '';
    expect(drawing(hostile)).not.toBe('');
    expect(kinds(drawing(hostile))).toEqual(kinds(drawing('words')));
  });

  test('in Markdown, as a CommonMark reader with HTML allowed takes it', () => {
    const markdown = createRequire(import.meta.url)('markdown-it')({ html: true }) as {
      render(t: string): string;
    };
    for (const text of texts) {
      const tags = (w: string) =>
        (markdown.render(markdownReport(made(text(w)).report, 'stranger').text).match(/<[^>]*>/g) ?? []).map(
          (t) => t.replace(/ alt="[^"]*"/, ''),
        );
      const shown = tags(hostile);
      expect(shown.length).toBeGreaterThan(10);
      expect(shown).toEqual(tags('words'));
    }
  });

  test('in the calendar: one entry for every coat, none of the stranger’s making', () => {
    const events = (w: string) => {
      const calendar = new ICAL.Component(ICAL.parse(calendarIcs(made(plan(w)).study)));
      return calendar.getAllSubcomponents().map((c) => [c.name, ...c.getAllProperties().map((p) => p.name)]);
    };
    expect(events(hostile).length).toBeGreaterThan(1);
    expect(events(hostile)).toEqual(events('words'));
  });

  test('in the materials list: no cell that a spreadsheet would run (OWASP, CSV Injection)', () => {
    for (const text of texts)
      for (const row of parseCsv(materialsCsv(made(text(hostile)).study), {
        relax_column_count: true,
      }) as string[][])
        for (const cell of row)
          if (!/^-?\d+(\.\d+)?(e[+-]?\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[\s]*[=+\-@\t\r|%]/);
  });

  test('in a hover: no picture or link but ours', () => {
    const text = plan(hostile);
    const { plan: read, study } = createAnalyser()(text, 'file:///stranger.paintplan');
    const markdown = createRequire(import.meta.url)('markdown-it')({ html: true }) as {
      render(t: string): string;
    };
    for (const word of ['yellow', 'grey', 'white', 'PY150', 'stand-oil', 'linen']) {
      const found = hover(read, study, text.indexOf(` ${word}`) + 2);
      expect(markdown.render(found?.markdown ?? '')).not.toMatch(/<(script|img|svg|a|details|iframe)\b/i);
    }
  });

  test('in commands for a forge: one line each', () => {
    const range = { start: { line: 1, column: 1 }, end: { line: 1, column: 2 } };
    const finding = {
      rule: 'a',
      severity: 'error',
      message: `${hostile}\n::error::x`,
      range,
      related: [],
      fixes: [],
    } as const;
    const lines = githubFormat([{ path: `${hostile}\n::x`, findings: [finding] }])
      .trimEnd()
      .split('\n');
    expect(lines).toHaveLength(1);
    expect(lines[0]?.split('::')[1]).toMatch(
      /^error file=[^,:]*,line=1,endLine=1,col=1,endColumn=2,title=a$/,
    );
  });
});

describe('in a terminal', () => {
  test('nothing in a plan steers it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'paintplan-terminal-'));
    const path = join(folder, 'stranger\u001b[2J.paintplan');
    writeFileSync(path, plan(HOSTILE.at(-1) as string));
    for (const args of [
      ['check', path],
      ['study', path],
      ['compare', path, path],
      ['check', `${path}.gone`],
    ]) {
      const { out, err } = await run(...args);
      expect(out + err, args[0]).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
      expect(out + err).toMatch(/stranger\ufffd|\ufffdgnp/);
    }
    rmSync(folder, { recursive: true });
  });

  test('tabs, lines and letters of every script stay', () => {
    expect(printable('a\tb\nÄ ж ‘x’ \u{1f58c}')).toBe('a\tb\nÄ ж ‘x’ \u{1f58c}');
  });
});

test('the check sees what it looks for', () => {
  expect(() => skeleton('<p>a < b</p>')).toThrow(/No tag of ours/);
  expect(() => skeleton('<p onclick="x">a</p>')).toThrow(/event/);
  expect(() => skeleton('<a href="javascript:x">a</a>')).toThrow(/leads/);
  expect(skeleton('<p class="x">a<br></p>')).toEqual(['p class', 'br ', '/p ']);
});

describe('the preview’s page in the editor', () => {
  const source = readFileSync(new URL('../../extension/src/preview.ts', import.meta.url), 'utf8');

  test('allows nothing by default, one script by its number, and no other host', () => {
    const policy = /const policy = `([^`]+)`/.exec(source)?.[1] ?? '';
    expect(policy).toMatch(/^default-src 'none'; /);
    expect(policy).toContain("script-src 'nonce-${own}'");
    expect(policy).not.toMatch(/unsafe|\*|https?:|connect-src|frame-src/);
    expect(source).toMatch(/localResourceRoots: \[Uri\.joinPath\(context\.extensionUri, 'preview'\)\]/);
  });

  test('trusts no words: no commands, no HTML in what the server says', () => {
    for (const file of ['preview', 'shared', 'status', 'node', 'browser'])
      expect(readFileSync(new URL(`../../extension/src/${file}.ts`, import.meta.url), 'utf8')).not.toMatch(
        /isTrusted: true|supportHtml|enableCommandUris|enableForms/,
      );
  });
});

const CHROMIUM = '/usr/bin/chromium';
test.runIf(existsSync(CHROMIUM))(
  'in a browser nothing of the stranger’s runs or is asked for',
  async () => {
    const args = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'];
    const quiet = ['--disable-background-networking', '--disable-component-update', '--disable-sync'];
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: [...args, ...quiet] });
    const tab = await browser.newPage();
    const happened: string[] = [];
    tab.on('request', (r) => happened.push(r.url()));
    tab.on('dialog', (d) => {
      happened.push(d.message());
      void d.dismiss();
    });
    for (const words of HOSTILE)
      for (const text of texts) {
        const page = htmlReport(made(text(words.replaceAll('"', "'"))).report);
        // without the policy of the page, which would hide that something got through
        await tab.setContent(page.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''));
        expect(
          await tab.locator('script, iframe, img, object, embed, form, [onload], [onerror]').count(),
        ).toBe(0);
      }
    expect(happened).toEqual([]);
    await browser.close();
  },
  120_000,
);
