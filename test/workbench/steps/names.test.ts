/** Names across files, words at the cursor, and what the status bar says. */
import { expect } from 'vitest';
import { findings, listed, paintplan } from '../cli.ts';
import { activeEditor, goTo, hover, openFile, placeOf, renameTo, save, status } from '../page.ts';
import { expectProblems } from '../problems.ts';
import { inBothHosts } from '../window.ts';

const MOOR = 'landscape/moor-after-rain.paintplan';
const EARTHS = 'landscape/earths.paintplan';

inBothHosts('names', 'trusted', (step, host) => {
  step('renames a paint in the palette and in the plan that uses it', async ({ page, folder, read }) => {
    const [moor, earths] = [read(MOOR), read(EARTHS)];
    expect(moor.split('yellow-ochre').length).toBeGreaterThan(2);
    // in the browser only open files are read
    if (host === 'web')
      for (const palette of ['earths', 'skies']) await openFile(page, `${palette}.paintplan`);
    await openFile(page, 'moor-after-rain.paintplan');
    await expectProblems(page, MOOR, listed(folder, MOOR));
    await renameTo(page, 'moor-after-rain.paintplan', placeOf(moor, 'yellow-ochre'), 'golden-ochre');
    await save(page);
    await expect.poll(() => read(MOOR)).toBe(moor.replaceAll('yellow-ochre', 'golden-ochre'));
    await expect.poll(() => read(EARTHS)).toBe(earths.replaceAll('yellow-ochre', 'golden-ochre'));
    await expectProblems(page, MOOR, listed(folder, MOOR));
  });

  if (host === 'node')
    step('renames in the plans and palettes that are not open, too', async ({ page, read }) => {
      const files = [MOOR, 'landscape/skies.paintplan', 'landscape/heath.paintplan'];
      const before = files.map(read);
      await renameTo(page, 'moor-after-rain.paintplan', placeOf(read(MOOR), 'cobalt-blue'), 'clear-blue');
      await save(page);
      await expect
        .poll(() => files.map(read), { timeout: 30_000 })
        .toEqual(before.map((text) => text.replaceAll('cobalt-blue', 'clear-blue')));
    });

  step('tells the figures of a layer at the cursor', async ({ page, folder, read }) => {
    const file = 'first-plan.paintplan';
    const study = JSON.parse(paintplan(folder, 'study', file, '--format', 'json')) as {
      layers: { name: string; composition: { pvc: { likely: number } } | null }[];
    };
    const pvc = study.layers.find((l) => l.name === 'red')?.composition?.pvc.likely ?? Number.NaN;
    await openFile(page, file);
    await goTo(page, ...placeOf(read(file), 'red {'));
    const words = await hover(page);
    expect(words).toContain('glaze red');
    expect(words).toContain(`pigment ${(pvc * 100).toFixed(1)} %`);
    expect(words).toMatch(/fatness \d+ %/);
    expect(words).toMatch(/ready \d/);
  });

  step('counts findings in the status bar as the command line does', async ({ page, folder }) => {
    const file = 'faulty/slips.paintplan';
    await openFile(page, file);
    const count = (severity: string) => findings(folder, file).filter((f) => f.severity === severity).length;
    const [errors, warnings] = [count('error'), count('warning')];
    await status(page)
      .filter({
        hasText: `${errors} error${errors === 1 ? '' : 's'}, ${warnings} warning${warnings === 1 ? '' : 's'}`,
      })
      .waitFor();
  });

  step('completes the name of a paint after a few letters', async ({ page, folder, read }) => {
    const file = 'matching.paintplan';
    const before = read(file);
    await openFile(page, file);
    const [line] = placeOf(before, 'layer hand');
    const at = before.split('\n')[line - 1]?.indexOf('   film') ?? 0;
    await goTo(page, line, at + 1);
    await page.keyboard.type(' + bl', { delay: 40 });
    const row = page.locator('.suggest-widget.visible .monaco-list-row', { hasText: 'blue' }).first();
    await row.waitFor();
    await row.click();
    await activeEditor(page)
      .locator('.view-line', { hasText: /flesh.\+.blue/ })
      .waitFor();
    await save(page);
    expect(read(file)).toBe(before.replace('colour flesh', 'colour flesh + blue'));
    await expectProblems(page, file, listed(folder, file));
  });
});
