/** The Problems panel, read as a painter reads it. */
import { basename } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { everyRow, runCommand } from './page.ts';

interface Row {
  readonly index: number;
  readonly level: number;
  readonly text: string;
}

// runs in the page
function readRows(rows: Element[]): Row[] {
  return rows.map((row) => {
    const all = (css: string) =>
      [...row.querySelectorAll(css)]
        .map((e) => e.textContent?.trim())
        .filter(Boolean)
        .join(' ')
        .replaceAll('\u00a0', ' ');
    const index = Number((row as HTMLElement).dataset.index);
    const level = Number(row.getAttribute('aria-level'));
    if (level === 1) return { index, level, text: row.querySelector('.label-name')?.textContent ?? '' };
    if (level > 2) return { index, level, text: row.textContent?.trim() ?? '' };
    const severity =
      ['error', 'warning', 'info'].find((s) => row.querySelector(`.marker-icon.${s}`)) ?? 'other';
    const at = (row.querySelector('.marker-line')?.textContent?.match(/\d+/g) ?? []).join(':');
    return {
      index,
      level,
      text: `${at} ${severity} ${all('.marker-source')}(${all('.marker-code, .code-link')}): ${all('.marker-message')}`,
    };
  });
}

/** What the panel lists of one file now: ‘line:column severity paintplan(rule): message’, sorted. */
export async function problems(page: Page, file: string): Promise<string[]> {
  const panel = page.locator('.markers-panel');
  if (!(await panel.isVisible())) await runCommand(page, 'Problems: Focus on Problems View');
  await panel.waitFor();
  // plans that are not open are listed too: only this file's are wanted
  const filter = page.locator('.markers-panel-action-filter-container input, .viewpane-filter input').first();
  if ((await filter.inputValue()) !== basename(file)) await filter.fill(basename(file));
  const list: string[] = [];
  let within = false;
  for (const row of await everyRow(page, panel.locator('.monaco-list').first(), readRows)) {
    if (row.level === 1) within = row.text === basename(file);
    else if (row.level === 2 && within) list.push(row.text);
  }
  return list.sort();
}

/** Waits until the panel lists exactly these findings of a file. */
export async function expectProblems(page: Page, file: string, expected: readonly string[]): Promise<void> {
  await expect.poll(() => problems(page, file), { timeout: 60_000, interval: 300 }).toEqual([...expected]);
}
