/** Handles of the workbench's page: what a painter does with keys and mouse, waiting by what is seen. */
import { basename } from 'node:path';
import type { Locator, Page } from 'playwright-core';

const exactly = (words: string) => new RegExp(`^\\s*${words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`);

/** The next two pictures the page draws. */
const drawn = (page: Page) =>
  page.evaluate(
    () => new Promise<void>((r) => requestAnimationFrame(() => requestAnimationFrame(() => r()))),
  );

const appears = (place: Locator, timeout: number) =>
  place.waitFor({ timeout }).then(
    () => true,
    () => false,
  );

/** Does a thing until something appears: keys pressed while the workbench is busy restoring are lost. */
export async function until(what: string, act: () => Promise<void>, seen: Locator): Promise<void> {
  for (let i = 0; i < 30; i++) {
    await act();
    if (await appears(seen, 2000)) return;
  }
  throw new Error(`${what} did not show what it should`);
}

async function quickInput(page: Page, key: string): Promise<Locator> {
  const input = page.locator('.quick-input-widget:visible input.input');
  await until(`The key ${key}`, () => page.keyboard.press(key), input);
  return input;
}

const quickRow = (page: Page, label: string) =>
  page
    .locator('.quick-input-list .monaco-list-row')
    .filter({ has: page.locator('.label-name', { hasText: exactly(label) }) })
    .first();

export const activeEditor = (page: Page) => page.locator('.editor-group-container.active .monaco-editor');

export const tab = (page: Page, name: string) => page.locator('.tabs-container .tab', { hasText: name });

/** Opens a file by its path within the folder and waits until its editor is the active one. */
export async function openFile(page: Page, path: string): Promise<void> {
  await (await quickInput(page, 'Control+p')).fill(path);
  const leaf = basename(path);
  await quickRow(page, leaf).click();
  await page.locator('.tabs-container .tab.active', { hasText: leaf }).first().waitFor();
  await activeEditor(page).locator('.view-line').first().waitFor();
}

/** Runs a command by its full title as the palette shows it, ‘Category: Title’. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await (await quickInput(page, 'F1')).fill(`>${title}`);
  const row = quickRow(page, title);
  if (!(await appears(row, 20_000))) {
    const seen = await page.locator('.quick-input-list .label-name').allInnerTexts();
    await page.keyboard.press('Escape');
    throw new Error(`There is no command ‘${title}’; the palette shows: ${seen.join(' | ') || 'nothing'}`);
  }
  await row.click();
}

/** Chooses a row of the list that is open on top. */
export const choose = (page: Page, label: string) => quickRow(page, label).click();

/** Puts the cursor at a line and column, from 1, and waits until the status bar says so. */
export async function goTo(page: Page, line: number, column: number): Promise<void> {
  const input = await quickInput(page, 'Control+g');
  await input.fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await cursorAt(page, line, column);
}

export const cursorAt = (page: Page, line: number, column: number) =>
  page
    .locator('.statusbar-item', { hasText: new RegExp(`^\\s*Ln ${line}, Col ${column}(?!\\d)`) })
    .first()
    .waitFor();

/** Waits until the cursor of an editor is in a line, whether or not the keyboard is there too. */
export const cursorInLine = (page: Page, line: number) =>
  page
    .locator('.monaco-editor .line-numbers.active-line-number', { hasText: exactly(String(line)) })
    .first()
    .waitFor();

/** Where some words first stand in a text, as line and column from 1. */
export function placeOf(text: string, words: string): readonly [number, number] {
  const at = text.indexOf(words);
  if (at < 0) throw new Error(`‘${words}’ is not in the text`);
  const before = text.slice(0, at).split('\n');
  return [before.length, (before.at(-1)?.length ?? 0) + 1];
}

export async function save(page: Page): Promise<void> {
  await runCommand(page, 'File: Save All Files').catch(() => runCommand(page, 'File: Save All'));
  await page.locator('.tabs-container .tab.dirty').first().waitFor({ state: 'detached' });
}

/** Renames what stands at a line and column of a file and waits for the texts to change. */
export async function renameTo(
  page: Page,
  file: string,
  at: readonly [number, number],
  name: string,
): Promise<void> {
  const input = page.locator('.rename-box input.rename-input');
  // on a busy machine another file may still be in front, the box may take the old name for the answer or lose the
  // focus: ask again from the beginning
  for (let i = 0; i < 10; i++) {
    await openFile(page, file);
    await goTo(page, ...at);
    await until('F2', () => page.keyboard.press('F2'), input);
    await input.and(page.locator(':focus')).waitFor();
    await input.fill(name);
    await drawn(page);
    await page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden' });
    if (await appears(page.locator('.tabs-container .tab.dirty').first(), 6000)) return;
  }
  throw new Error(`Nothing was renamed to ‘${name}’`);
}

/** What Ctrl+. offers at the cursor. */
export async function offers(page: Page): Promise<string[]> {
  const rows = page.locator('.action-widget .monaco-list-row.action');
  await until('Ctrl+.', () => page.keyboard.press('Control+.'), rows.first());
  return (await rows.allInnerTexts()).map((t) => t.replaceAll('\u00a0', ' ').trim());
}

/** Takes one of the offers; the cursor is where `offers` wants it. */
export async function take(page: Page, title: string): Promise<void> {
  const row = page.locator('.action-widget .monaco-list-row.action', { hasText: exactly(title) }).first();
  // the first answer may come before the findings do: ask again
  for (let i = 0; i < 15; i++) {
    await offers(page);
    if (await appears(row, 1000)) {
      await row.click();
      await row.waitFor({ state: 'detached' });
      return;
    }
    await page.keyboard.press('Escape');
  }
  throw new Error(`‘${title}’ is not offered, but: ${(await offers(page)).join(' | ')}`);
}

/** Text of what shows at the cursor on Ctrl+K Ctrl+I. */
export async function hover(page: Page): Promise<string> {
  const box = page.locator('.monaco-hover:visible .hover-contents');
  await until('The hover', () => runCommand(page, 'Show or Focus Hover'), box.first());
  // parts come one by one, the finding first
  for (let before = ''; ; ) {
    const now = (await box.allInnerTexts()).join('\n').trim();
    if (now === before && now && !/Loading/.test(now)) return now;
    before = now;
    await page.waitForTimeout(300);
  }
}

/** The page inside a web view whose content holds `marker`. */
export const webView = (page: Page) =>
  page.frameLocator('iframe.webview').frameLocator('iframe#active-frame');

/** Our own item of the status bar. */
export const status = (page: Page) => page.locator('.statusbar-item[id*="paintplan.status"]');

/** Scrolls a list to its top, then down by halves, giving every row once drawn. */
export async function everyRow<T extends { index: number }>(
  page: Page,
  list: Locator,
  read: (rows: Element[]) => T[],
): Promise<T[]> {
  const rows = list.locator('.monaco-list-rows > .monaco-list-row');
  if ((await rows.count()) === 0) return [];
  const box = await list.boundingBox();
  if (!box) return [];
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const wheel = async (by: number) => {
    await page.mouse.wheel(0, by);
    await drawn(page);
  };
  const top = list.locator('.monaco-list-rows > .monaco-list-row[data-index="0"]');
  for (let i = 0; i < 200 && (await top.count()) === 0; i++) await wheel(-box.height);
  const seen = new Map<number, T>();
  for (let quiet = 0; quiet < 3; await wheel(box.height / 2)) {
    const before = seen.size;
    for (const row of await rows.evaluateAll(read)) seen.set(row.index, row);
    quiet = seen.size === before ? quiet + 1 : 0;
  }
  return [...seen.values()].sort((a, b) => a.index - b.index);
}
