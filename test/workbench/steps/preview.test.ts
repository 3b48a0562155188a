/** The preview beside the plan, and the walkthrough that leads to it. */
import { expect } from 'vitest';
import { paintplan } from '../cli.ts';
import { activeEditor, choose, cursorInLine, goTo, openFile, placeOf, runCommand, webView } from '../page.ts';
import { inBothHosts } from '../window.ts';

const PLAN = 'first-plan.paintplan';

const words = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, '')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
    .trim();

inBothHosts('preview', 'trusted', (step) => {
  step('opens beside the plan with the parts of the report', async ({ page, folder }) => {
    const report = paintplan(folder, 'report', PLAN, '--to', 'html');
    const expected = [...report.matchAll(/<h2[^>]*>([\s\S]*?)<\/h2>/g)].map((m) => words(m[1] ?? ''));
    expect(expected.length).toBeGreaterThan(5);
    await openFile(page, PLAN);
    await runCommand(page, 'Paintplan: Open the preview beside the plan');
    const view = webView(page);
    await view.locator('h1').waitFor();
    await expect.poll(async () => (await view.locator('h2').allInnerTexts()).map(words)).toEqual(expected);
  });

  step('shows each layer in a table and in the section drawing', async ({ page }) => {
    const view = webView(page);
    for (const layer of ['priming', 'form', 'red']) {
      expect(await view.locator(`table [data-layer="${layer}"]`).count(), layer).toBeGreaterThan(0);
      expect(await view.locator(`svg [data-layer="${layer}"]`).count(), layer).toBeGreaterThan(0);
    }
    const section = view.locator('svg[role="img"]').first();
    await section.scrollIntoViewIfNeeded();
    const box = await section.boundingBox();
    expect(box?.width).toBeGreaterThan(100);
    expect(box?.height).toBeGreaterThan(50);
  });

  step('leads the editor to the layer that is clicked', async ({ page, read }) => {
    await goTo(page, 1, 1);
    const [line] = placeOf(read(PLAN), 'glaze red');
    await webView(page).locator('table [data-layer="red"]').first().click();
    await cursorInLine(page, line);
  });

  step('follows the cursor of the editor', async ({ page, read }) => {
    // the click may have left the keyboard in the preview
    await openFile(page, PLAN);
    await goTo(page, ...placeOf(read(PLAN), 'underlayer'));
    await webView(page).locator('table [data-layer="form"].current').first().waitFor();
    expect(await webView(page).locator('[data-layer="red"].current').count()).toBe(0);
  });

  step('redraws while the plan is written', async ({ page, read }) => {
    const [line, column] = placeOf(read(PLAN), 'A pomegranate');
    await goTo(page, line, column + 'A '.length);
    await page.keyboard.type('ripe ');
    await webView(page).locator('h1', { hasText: 'A ripe pomegranate, first try' }).waitFor();
    await runCommand(page, 'File: Revert File');
    await webView(page).locator('h1', { hasText: 'A pomegranate, first try' }).waitFor();
  });

  step('offers a walkthrough whose first step begins a plan', async ({ page }) => {
    await runCommand(page, 'View: Close All Editors');
    await runCommand(page, 'Welcome: Open Walkthrough...');
    await choose(page, 'A first painting plan');
    const steps = page.locator('.gettingStartedContainer .getting-started-step');
    await expect.poll(() => steps.count()).toBe(3);
    await steps.filter({ hasText: 'Write ten lines' }).click();
    await webView(page).locator('body', { hasText: 'A plan reads from the support upwards' }).waitFor();
  });

  step('shows what each step of the walkthrough says', async ({ page }) => {
    const steps = page.locator('.gettingStartedContainer .getting-started-step');
    await steps.filter({ hasText: 'Read what is found' }).click();
    await webView(page).locator('body', { hasText: 'Findings stand under the words' }).waitFor();
    await steps.filter({ hasText: 'Look at it' }).click();
    await webView(page).locator('body', { hasText: 'The preview shows the section' }).waitFor();
    await steps.filter({ hasText: 'Write ten lines' }).click();
  });

  step('begins a plan from the walkthrough, which the preview then shows', async ({ page }) => {
    await page
      .locator('.gettingStartedContainer')
      .getByRole('button', { name: 'Begin a first plan' })
      .click();
    await activeEditor(page)
      .locator('.view-line', { hasText: /A.first.try/ })
      .waitFor();
    await activeEditor(page).locator('.colorpicker-color-decoration').first().waitFor();
    await runCommand(page, 'Paintplan: Open the preview beside the plan');
    await webView(page).locator('h1', { hasText: 'A first try' }).waitFor();
  });
});
