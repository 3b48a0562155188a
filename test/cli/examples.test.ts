/** The command line on every example, as a user runs it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { files, run } from './run.ts';

const faulty = readdirSync('examples/faulty').map((f) => join('examples/faulty', f));
const sound = files('examples', '.paintplan').filter((f) => !f.includes('faulty'));

describe('examples', () => {
  test.each(sound.map((f) => [f]))('%s has no error and no warning', async (path) => {
    const { code, out } = await run('check', path, '--format', 'json', '--max-warnings', '0');
    const found = JSON.parse(out).files[0].findings.filter(
      (f: { severity: string }) => f.severity === 'error' || f.severity === 'warning',
    );
    expect(found.map((f: { rule: string; message: string }) => `${f.rule}: ${f.message}`)).toEqual([]);
    expect(code).toBe(0);
  });

  test.each(faulty.map((f) => [f]))('%s is found faulty as its first line says', async (path) => {
    const named = /Faulty: ([^\n]*)/.exec(readFileSync(path, 'utf8'))?.[1] ?? '';
    const wanted = [...named.matchAll(/\b[a-z]+(?:-[a-z0-9]+)+\b/g)].map((m) => m[0]);
    const { out } = await run('check', path, '--format', 'json');
    const rules = new Set<string>(
      JSON.parse(out)
        .files[0].findings.filter(
          (f: { severity: string }) => f.severity === 'error' || f.severity === 'warning',
        )
        .map((f: { rule: string }) => f.rule),
    );
    expect(wanted.length).toBeGreaterThan(0);
    for (const rule of wanted) expect([...rules], rule).toContain(rule);
    for (const rule of rules) expect(wanted, `${rule} is not named`).toContain(rule);
  });

  test.each([...sound, ...faulty].map((f) => [f]))('study %s prints no figure that is none', async (path) => {
    const { out } = await run('study', path);
    expect(out).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(out.length).toBeGreaterThan(200);
  });

  test.each([...sound, ...faulty].map((f) => [f]))(
    '%s is in canonical form or becomes it without loss',
    async (path) => {
      const { code } = await run('format', path, '--check');
      if (!path.includes('faulty')) expect(code).toBe(0);
    },
  );
});
