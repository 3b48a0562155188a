/** A folder that is not trusted; the server begun anew. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { listed } from '../cli.ts';
import { goTo, openFile, placeOf, runCommand, save, status, take } from '../page.ts';
import { expectProblems, problems } from '../problems.ts';
import { inBothHosts } from '../window.ts';

const MOOR = 'landscape/moor-after-rain.paintplan';

inBothHosts('trust', 'untrusted', (step, host) => {
  step('reads no other file in a folder that is not trusted, and says so', async ({ page, folder }) => {
    if (host === 'web') for (const p of ['earths', 'skies']) await openFile(page, `${p}.paintplan`);
    await openFile(page, 'moor-after-rain.paintplan');
    expect(listed(folder, MOOR).join('\n')).not.toContain('use-missing');
    await expect
      .poll(async () => (await problems(page, MOOR)).filter((l) => /use-|unknown-name/.test(l)).join('\n'), {
        timeout: 60_000,
      })
      .toMatch(/trust/i);
  });

  step('reads them once the folder is trusted', async ({ page, folder }) => {
    await runCommand(page, 'Workspaces: Manage Workspace Trust');
    await page.locator('.workspace-trust-editor').getByRole('button', { name: 'Trust', exact: true }).click();
    await page.locator('.workspace-trust-editor.trusted').waitFor();
    await openFile(page, 'moor-after-rain.paintplan');
    await expectProblems(page, MOOR, listed(folder, MOOR));
  });
});

/** Processes that run our server. */
const servers = () =>
  readdirSync('/proc').filter((entry) => {
    try {
      return (
        /^\d+$/.test(entry) &&
        /paintplan-vscode\S*server\.js/.test(readFileSync(`/proc/${entry}/cmdline`, 'utf8'))
      );
    } catch {
      // it ended meanwhile
      return false;
    }
  });

inBothHosts('restart', 'trusted', (step, host) => {
  const file = 'faulty/white-in-glaze.paintplan';
  step('begins the server anew, and all goes on', async ({ page, folder, read }) => {
    await openFile(page, file);
    await expectProblems(page, file, listed(folder, file));
    const before = servers();
    await runCommand(page, 'Paintplan: Restart the language server');
    // in the browser the server is a worker, which cannot be told from the next
    if (host === 'node')
      await expect
        .poll(() => servers().filter((s) => !before.includes(s)).length, { timeout: 60_000 })
        .toBe(1);
    await openFile(page, file);
    await goTo(page, ...placeOf(read(file), '1 white'));
    await take(page, 'Make it a scumble');
    await save(page);
    expect(read(file)).toContain('scumble skin');
    await expectProblems(page, file, listed(folder, file));
    await openFile(page, file);
    await status(page)
      .filter({ hasText: /Plan in order|error/ })
      .waitFor();
  });
});
