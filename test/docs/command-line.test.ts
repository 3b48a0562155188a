/** The pages of the command line and of the editors name every command, option and setting there is. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSettings } from '../../language/src/server/settings.ts';
import { run } from '../cli/run.ts';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const page = read('language/docs/command-line.md');

test('every command and option of --help is on the page, and none that is not', async () => {
  const commands = [...(await run('--help')).out.matchAll(/^ {2}([a-z]+) (?:\[options\] )?[<[]/gm)].map(
    (m) => m[1] as string,
  );
  expect(commands).toContain('explain');
  const written = [...page.matchAll(/^\| `paintplan ([a-z]+)(.*?)` \|/gm)];
  expect(written.map((m) => m[1]).sort()).toEqual(commands.filter((c) => c !== 'help').sort());
  for (const [, command = '', usage = ''] of written) {
    const { out } = await run(command, '--help');
    const options = [...out.matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)].map((m) => m[1] as string);
    const known = options.filter((o) => o !== '--help').sort();
    expect([...new Set(usage.match(/--[a-z-]+/g) ?? [])].sort(), command).toEqual(known);
  }
});

test('every setting of the editor is on its page, with its default', () => {
  const settings = JSON.parse(read('extension/package.json')).contributes.configuration.properties;
  const editors = read('language/docs/editors.md');
  const usual = readSettings({});
  for (const [name, { type, default: value }] of Object.entries<{ type: string; default: unknown }>(
    settings,
  )) {
    if (name.includes('.trace.')) continue;
    const key = name.replace('paintplan.', '');
    const row = editors.split('\n').find((l) => l.startsWith(`| \`${key}\` |`));
    expect(row, key).toBeDefined();
    if (type !== 'boolean') continue;
    expect(row, key).toContain(`true or false; ${value}`);
    const [group, inner] = key.split('.') as [keyof typeof usual, string?];
    const taken = usual[group];
    expect(inner === undefined ? taken : (taken as Record<string, boolean>)[inner], key).toBe(value);
  }
});
