/** The command line on every example, as a user runs it. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { files, run } from './run.ts';

const faulty = readdirSync('examples/faulty').map((f) => join('examples/faulty', f));
const sound = files('examples', '.paintplan').filter((f) => !f.includes('faulty'));
const notes = files('examples', '.md').filter((f) => /^```paintplan$/m.test(readFileSync(f, 'utf8')));

/** Which reports a file can give: a calendar wants a first day, a section drawing wants layers, a card a plan. */
function kindsFor(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  return [
    'html',
    'md',
    'json',
    'csv',
    ...(/^start /m.test(text) ? ['ics'] : []),
    ...(/^plan "/m.test(text) ? ['card'] : []),
    ...(/^(?:ground|imprimatura|underlayer|layer|glaze) /m.test(text) ? ['svg'] : []),
  ];
}
const targets = sound.flatMap((path) =>
  [...readFileSync(path, 'utf8').matchAll(/^mix (\S+) = .* target /gm)].map((m) => [path, m[1] as string]),
);

describe('examples', () => {
  test.each([...sound, ...notes].map((f) => [f]))('%s has no error and no warning', async (path) => {
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

  test.each([...sound, ...notes, ...faulty].map((f) => [f]))(
    '%s is in canonical form or becomes it without loss',
    async (path) => {
      const { code } = await run('format', path, '--check');
      if (!path.includes('faulty')) expect(code).toBe(0);
    },
  );

  test.each(sound.map((f) => [f]))('report %s gives every kind of page it can', async (path) => {
    const folder = mkdtempSync(join(tmpdir(), 'examples-'));
    try {
      for (const kind of kindsFor(path)) {
        const to = join(folder, kind === 'card' ? 'report.card.html' : `report.${kind}`);
        const { code, err } = await run('report', path, '--to', kind, '--out', to);
        expect(code, `${kind}: ${err}`).toBe(0);
        expect(readFileSync(to, 'utf8'), kind).not.toMatch(/\bNaN\b|\bInfinity\b|>undefined<|\[object/);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test('some mixes have targets', () => expect(targets.length).toBeGreaterThanOrEqual(4));

  // as near as a painter asks for: within what the plan says, else ΔE00 4
  test.each(targets)('match %s --mix %s comes near enough', async (path, mix) => {
    const { code, out } = await run('match', path, '--mix', mix, '--format', 'json');
    const [best] = JSON.parse(out).recipes as { deltaE00: number }[];
    const asked = new RegExp(`^mix ${mix} = .* within ([\\d.]+)$`, 'm').exec(readFileSync(path, 'utf8'))?.[1];
    expect(code).toBe(0);
    expect(best?.deltaE00).toBeLessThanOrEqual(Number(asked ?? 4));
  });
});
