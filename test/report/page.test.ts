/**
 * Reports as pages: valid HTML, and without accessibility faults in a real browser (axe-core's rules), light and dark.
 * The browser is Debian's Chromium, which the continuous integration installs; elsewhere that part is left out.
 */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { HtmlValidate } from 'html-validate';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { buildReport } from '../../language/src/report/build.ts';
import { cards } from '../../language/src/report/card.ts';
import { cardsPage } from '../../language/src/report/card-page.ts';
import { htmlReport } from '../../language/src/report/html.ts';
import { escapeMarkup } from '../../language/src/report/markup.ts';
import { sectionDrawing } from '../../language/src/report/section.ts';
import { cardTexts } from './card-texts.ts';

const page = (path: string): string => {
  const { study, findings } = createAnalyser()(readFileSync(path, 'utf8'), `file:///${path}`);
  return htmlReport(buildReport(study, findings(), () => '1:1'));
};
const plans = [
  'examples/still-life.paintplan',
  'examples/old-panel.paintplan',
  'examples/faulty/slips.paintplan',
];
const cardsOf = (text: string): string => {
  const { study } = createAnalyser()(text, 'file:///a.paintplan');
  return cardsPage(study.plan.title ?? '', cards(study, 'There is an error in this text.'));
};
const pages: readonly (readonly [string, () => string])[] = [
  ...plans.map((p) => [p, () => page(p)] as const),
  ...[plans[0]!, plans[2]!].map((p) => [`cards of ${p}`, () => cardsOf(readFileSync(p, 'utf8'))] as const),
];
const CHROMIUM = '/usr/bin/chromium';

describe.each(pages)('%s', (_, html) => {
  test('is valid HTML', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: {
        'no-inline-style': 'off',
        'long-title': 'off',
        'void-style': 'off',
        'doctype-style': 'off',
        'no-trailing-whitespace': 'off',
        'svg-focusable': 'off',
        'element-case': 'off',
      },
    });
    const found = await validator.validateString(html());
    expect(
      found.results.flatMap((r) => r.messages.map((m) => `${m.line}:${m.column} ${m.ruleId} ${m.message}`)),
    ).toEqual([]);
  });
});

describe.each(plans.map((p) => [p]))('%s', (path) => {
  test('has a title and a description in every drawing', () => {
    const drawings =
      page(path).match(/<svg (?!class="swatch" [^>]*aria-hidden="true")[\s\S]*?<\/svg>/g) ?? [];
    expect(drawings.length).toBeGreaterThan(0);
    for (const d of drawings)
      expect(d).toMatch(/role="img".*<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]+<\/desc>/s);
  });
});

describe.runIf(existsSync(CHROMIUM))('in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({
      executablePath: CHROMIUM,
      args: [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
  }, 60_000);
  afterAll(() => browser?.close());

  test.each(
    pages.flatMap(([p, html]) => (['light', 'dark'] as const).map((scheme) => [p, scheme, html] as const)),
  )(
    '%s, %s: no accessibility fault',
    async (_, colorScheme, html) => {
      const context = await browser.newContext({ colorScheme, bypassCSP: true });
      const tab = await context.newPage();
      await tab.setContent(html());
      await tab.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
      const found = await tab.evaluate(async () => {
        const { violations } = await (
          globalThis as unknown as {
            axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
          }
        ).axe.run();
        return violations.map(
          (v) =>
            `${v.id}: ${v.nodes
              .slice(0, 2)
              .map((n) => n.html.slice(0, 160))
              .join(' | ')}`,
        );
      });
      expect(found).toEqual([]);
      await context.close();
    },
    60_000,
  );

  test('prints on A4 and asks nothing of the network', async () => {
    const tab = await browser.newPage();
    const asked: string[] = [];
    tab.on('request', (r) => asked.push(r.url()));
    await tab.setContent(page(plans[0] as string));
    const pdf = await tab.pdf({ format: 'A4' });
    expect(pdf.length).toBeGreaterThan(20_000);
    expect(asked).toEqual([]);
    await tab.close();
  }, 60_000);

  // ISO 216: A4 is 210 × 297 mm; 390 px is the width of a common phone
  test.each(cardTexts)(
    'a card of %s prints on one side of A4 and is as wide as a phone',
    async (_, text) => {
      const tab = await browser.newPage({ viewport: { width: 390, height: 844 } });
      await tab.setContent(cardsOf(text));
      const sittings = await tab.locator('article').count();
      expect(sittings).toBeGreaterThan(0);
      expect(await tab.evaluate('document.documentElement.scrollWidth')).toBe(390);
      const pdf = (await tab.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(sittings);
      for (const [, width, height] of pdf.matchAll(/\/MediaBox\s*\[0 0 (\S+) (\S+)\]/g)) {
        expect(Math.abs(Number(width) - (210 / 25.4) * 72)).toBeLessThan(1);
        expect(Math.abs(Number(height) - (297 / 25.4) * 72)).toBeLessThan(1);
      }
      await tab.close();
    },
    60_000,
  );
});

test('words of a plan stay words, whatever characters they hold', () => {
  expect(escapeMarkup('<b>"&\'\u0000\ud800</b>')).toBe('&lt;b&gt;&quot;&amp;&#39;\ufffd\ufffd&lt;/b&gt;');
  const { study } = createAnalyser()(
    'record "<svg onload=x>"\narea sky 50 %\nlayer a { on sky   colour unknown }\nsample "]]><script>" in sky { a 10 µm }\n',
    'file:///a.paintplan',
  );
  const drawing = sectionDrawing(study)?.markup ?? '';
  expect(drawing).toMatch(/&lt;svg onload=x&gt;/);
  expect(drawing).not.toMatch(/<script|<svg onload/);
});
