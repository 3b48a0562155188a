/** One window of the workbench on a copy of the examples, and the steps that are taken in it. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { HOSTS, type Host, type Trust } from './servers.ts';

const EXAMPLES = fileURLToPath(new URL('../../examples', import.meta.url));
const OWN = fileURLToPath(new URL('folder', import.meta.url));
const SHOTS = fileURLToPath(new URL('shots', import.meta.url));
const PATIENCE_MS = 45_000;

export interface Window {
  readonly host: Host;
  readonly page: Page;
  /** the folder that is open, a copy: what is saved is read there */
  readonly folder: string;
  /** what the page wrote on its console */
  readonly console: readonly string[];
  read(file: string): string;
  close(): Promise<void>;
}

async function openWindow(host: Host, trust: Trust): Promise<Window> {
  const folder = join(mkdtempSync(join(inject('scratch'), 'window-')), 'plans');
  mkdirSync(folder);
  for (const from of [EXAMPLES, OWN]) cpSync(from, folder, { recursive: true });

  const browser = await chromium.connect(inject('browser'));
  let context: BrowserContext | undefined;
  try {
    context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENCE_MS);
    const written: string[] = [];
    page.on('console', (m) => {
      // add-ons in C++ are not built here, which the host tells at length
      if (m.type() !== 'log' && !/spdlog|watchdog/.test(m.text())) written.push(`${m.type()}: ${m.text()}`);
    });
    page.on('pageerror', (e) => written.push(`pageerror: ${e.stack ?? e}`));
    await page.goto(`${inject('workbenches')[`${host}-${trust}`]}?folder=${encodeURIComponent(folder)}`);
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
    return {
      host,
      page,
      folder,
      console: written,
      read: (file) => readFileSync(join(folder, file), 'utf8'),
      close: () => browser.close(),
    };
  } catch (error) {
    await context?.pages()[0]?.screenshot({ path: join(SHOTS, `${host}-no-window.png`) });
    await browser.close();
    throw error;
  }
}

/**
 * Errors of ours: the page's own, and those of both extension hosts, which the workbench repeats on the page's console.
 * They name the extension, or the language client by its title.
 */
const faults = (w: Window) =>
  w.console.filter((l) => /^(error|pageerror)/.test(l) && /paintplan-vscode|\bPaintplan\b/.test(l));

const slug = (words: string) =>
  words
    .toLowerCase()
    .replace(/[^a-z\d]+/g, '-')
    .replace(/^-|-$/g, '');

type Step = (name: string, work: (w: Window) => Promise<void>) => void;

/**
 * The same steps in both hosts, each on a window of its own. Every step leaves a picture; one that fails says where the
 * picture is and what the page last wrote, and the steps after it, which would start from nowhere, are not tried.
 */
export function inBothHosts(what: string, trust: Trust, steps: (step: Step, host: Host) => void): void {
  describe.each(HOSTS.map((h) => [h]))(`${what}, %s`, (host) => {
    let window: Window | undefined;
    let failed: string | undefined;
    let number = 0;
    beforeAll(async () => {
      window = await openWindow(host, trust);
    });
    afterAll(async () => {
      await window?.close();
    });
    const step: Step = (name, work) => {
      const file = join(SHOTS, `${slug(what)}-${host}-${++number}-${slug(name)}.png`);
      test(name, async (context) => {
        if (failed) return context.skip(`‘${failed}’ failed before`);
        if (!window) throw new Error('There is no window.');
        const shoot = (page: Page) => page.screenshot({ path: file });
        try {
          await work(window);
          await shoot(window.page);
        } catch (error) {
          failed = name;
          await shoot(window.page).catch(() => {});
          const told = error instanceof Error ? error : new Error(String(error));
          told.message = [
            `Step ‘${name}’ (${what}, ${host}): ${told.message}`,
            `Picture: ${file}`,
            `Console of the page, last lines:\n  ${window.console
              .slice(-12)
              .map((l) => l.slice(0, 500))
              .join('\n  ')}`,
          ].join('\n');
          throw told;
        }
      });
    };
    steps(step, host);
    step('leaves no fault of ours behind', async (w) => {
      expect(faults(w)).toEqual([]);
      const said = await w.page.locator('.notification-list-item-message').allInnerTexts();
      expect(said.filter((t) => /paintplan/i.test(t))).toEqual([]);
    });
  });
}
