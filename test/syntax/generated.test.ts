/** The generated parser is what the grammar gives today. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const language = new URL('../../language/', import.meta.url).pathname;
const tool = new URL('../../node_modules/langium-cli/bin/langium.js', import.meta.url).pathname;

test('language/generated is current: else run npm run generate', () => {
  const own = mkdtempSync(join(tmpdir(), 'paintplan-generated-'));
  cpSync(join(language, 'grammar'), join(own, 'grammar'), { recursive: true });
  cpSync(join(language, 'langium-config.json'), join(own, 'langium-config.json'));
  const said = execFileSync(
    process.execPath,
    [tool, 'generate', '--file', join(own, 'langium-config.json')],
    { encoding: 'utf8' },
  );
  expect(said).not.toMatch(/warning|error/i);
  for (const file of readdirSync(join(language, 'generated')))
    expect(readFileSync(join(own, 'generated', file), 'utf8'), file).toBe(
      readFileSync(join(language, 'generated', file), 'utf8'),
    );
  rmSync(own, { recursive: true });
});
