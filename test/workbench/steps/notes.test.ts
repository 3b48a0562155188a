/** A plan fenced in a Markdown note, with no plan of its own open. */
import { expect } from 'vitest';
import { listed } from '../cli.ts';
import { openFile, runCommand, webView } from '../page.ts';
import { expectProblems } from '../problems.ts';
import { inBothHosts } from '../window.ts';

inBothHosts('notes', 'trusted', (step, host) => {
  step('checks the plan inside a note where it stands', async ({ page, folder }) => {
    const expected = listed(folder, 'note.md');
    expect(expected.some((l) => l.includes('(unknown-pigment)'))).toBe(true);
    await openFile(page, 'note.md');
    await expectProblems(page, 'note.md', expected);
  });

  step('shows the plan in the Markdown preview', async ({ page }) => {
    await openFile(page, 'note.md');
    await runCommand(page, 'Markdown: Open Preview to the Side');
    const view = webView(page);
    await view.locator('h1', { hasText: 'A lemon, a first note' }).waitFor();
    await view.locator('code', { hasText: 'A lemon in a note' }).waitFor();
    await view.locator('p', { hasText: 'Words after the plan.' }).waitFor();
    // in the browser the editor's Markdown runs in another host than the extension, and draws no plans
    if (host === 'node') {
      await view.locator('svg[role="img"]').first().waitFor();
      expect(await view.locator('svg[role="img"] title').first().textContent()).toMatch(/section/i);
    }
  });
});
