/** A plan is opened, its colours and findings are seen, a fix and a match are taken, the text is formatted. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { listed, paintplan } from '../cli.ts';
import { activeEditor, goTo, openFile, placeOf, runCommand, save, take } from '../page.ts';
import { expectProblems } from '../problems.ts';
import { inBothHosts } from '../window.ts';

interface Study {
  readonly layers: readonly { readonly name: string; readonly colour: readonly { readonly hex: string }[] }[];
}

const rgb = (hex: string) =>
  `rgb(${[1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16)).join(', ')})`;

inBothHosts('editing', 'trusted', (step) => {
  step('opens an example, coloured as a plan', async ({ page }) => {
    await openFile(page, 'first-plan.paintplan');
    await page.locator('.statusbar-item', { hasText: /^\s*Paintplan\s*$/ }).waitFor();
    // words, names and numbers are told apart by the grammar
    await expect
      .poll(() =>
        activeEditor(page)
          .locator('.view-line span[class^="mtk"]')
          .evaluateAll((spans) => new Set(spans.map((s) => s.className.split(' ')[0])).size),
      )
      .toBeGreaterThan(3);
  });

  step('shows a box in the predicted colour beside each layer', async ({ page, folder }) => {
    const study = JSON.parse(paintplan(folder, 'study', 'first-plan.paintplan', '--format', 'json')) as Study;
    const expected = study.layers.map((l) => rgb(l.colour[0]?.hex ?? ''));
    expect(expected).toHaveLength(3);
    await expect
      .poll(
        () =>
          activeEditor(page)
            .locator('.colorpicker-color-decoration')
            .evaluateAll((boxes) =>
              boxes
                .sort((a, b) => a.getBoundingClientRect().top - b.getBoundingClientRect().top)
                .map((b) => getComputedStyle(b).backgroundColor),
            ),
        { timeout: 60_000 },
      )
      .toEqual(expected);
  });

  for (const file of ['still-life', 'faulty/slips', 'faulty/white-in-glaze', 'faulty/lean-over-fat'])
    step(`finds in ${file} what the command line finds`, async ({ page, folder }) => {
      await openFile(page, `${file}.paintplan`);
      await expectProblems(page, `${file}.paintplan`, listed(folder, `${file}.paintplan`));
    });

  step('takes a fix: the text changes and the finding goes', async ({ page, folder, read }) => {
    const file = 'faulty/slips.paintplan';
    const before = read(file);
    const rules = () => listed(folder, file).map((l) => /\(([a-z\d-]+)\)/.exec(l)?.[1]);
    expect(rules()).toContain('unknown-pigment');
    await openFile(page, file);
    await goTo(page, ...placeOf(before, 'PB99'));
    await take(page, 'Change to PB29');
    await save(page);
    expect(read(file)).toBe(before.replace('PB99', 'PB29'));
    expect(rules()).not.toContain('unknown-pigment');
    await expectProblems(page, file, listed(folder, file));
  });

  step('takes a fix of several edits', async ({ page, folder, read }) => {
    const file = 'faulty/slips.paintplan';
    const before = read(file);
    await goTo(page, ...placeOf(before, '70 % odourless'));
    await take(page, 'Rescale to 64 + 36 %');
    await save(page);
    expect(read(file)).toBe(before.replace('70 % odourless-spirit + 40 %', '64 % odourless-spirit + 36 %'));
    await expectProblems(page, file, listed(folder, file));
  });

  step(
    'proposes the proportions that the command line finds for a colour',
    async ({ page, folder, read }) => {
      const file = 'matching.paintplan';
      const found = JSON.parse(paintplan(folder, 'match', file, '--mix', 'flesh', '--format', 'json')) as {
        recipes: { parts: { paint: string; parts: number }[]; deltaE00: number }[];
      };
      const best = found.recipes[0];
      const words = best?.parts.map((p) => `${p.parts} ${p.paint}`).join(' + ') ?? '';
      const before = read(file);
      await openFile(page, file);
      await goTo(page, ...placeOf(before, '6 white'));
      await take(page, `Propose proportions: ${words} (predicted ΔE00 ${best?.deltaE00.toFixed(1)})`);
      await save(page);
      expect(read(file)).toBe(before.replace('6 white + 2 ochre + 1 red', words));
      await expectProblems(page, file, listed(folder, file));
    },
  );

  step('formats as the command line does', async ({ page, folder, read }) => {
    const file = 'untidy.paintplan';
    writeFileSync(join(folder, 'by-command.paintplan'), read(file));
    paintplan(folder, 'format', 'by-command.paintplan');
    const wanted = read('by-command.paintplan');
    expect(wanted).not.toBe(read(file));
    await openFile(page, file);
    await runCommand(page, 'Format Document');
    await page.locator('.tabs-container .tab.active.dirty').waitFor();
    await save(page);
    expect(read(file)).toBe(wanted);
  });
});
