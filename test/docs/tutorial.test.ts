/** The tutorial, read as its reader reads it: every snippet is typed, every command run, every answer compared. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { run } from '../cli/run.ts';
import { chosen } from './chosen.ts';
import { after, append, instead } from './edit.ts';
import { kept, page, walk } from './tutorial.ts';

const walked = await walk();

describe('the tutorial', () => {
  test.each(walked.blocks.map((b) => [b.line, b.what, b]))('line %i: %s', (_line, _what, block) => {
    // `node test/docs/update.ts` writes what the tool says now
    expect(block.said).toBe(block.should);
  });

  test('leaves out no block', () => {
    const fences = readFileSync(page, 'utf8').match(/^```(?:paintplan|sh|text)$/gm) ?? [];
    const answers = walked.blocks.filter((b) => b.said !== '' && !/^[^:]+\.paintplan: |^hover /.test(b.what));
    const hovers = walked.blocks.filter((b) => b.what.startsWith('hover '));
    expect(fences.length).toBe(walked.blocks.length - hovers.length + answers.length);
  });

  test.each(kept.map((k) => [k.name, k.path]))('ends with %s as the examples keep it', (name, path) => {
    expect(walked.files.get(name)).toBe(readFileSync(path, 'utf8'));
  });

  test('ends with twelve layers, in order and in canonical form', async () => {
    const paths = kept.map((k) => k.path);
    const { out } = await run('check', ...paths, '--format', 'json');
    const found = JSON.parse(out).files.flatMap((f: { findings: { severity: string; message: string }[] }) =>
      f.findings.filter((x) => x.severity === 'error' || x.severity === 'warning'),
    );
    expect(found).toEqual([]);
    expect((await run('format', '--check', ...paths)).code).toBe(0);
    const study = JSON.parse((await run('study', paths[0] as string, '--format', 'json')).out);
    expect(study.layers.length).toBe(12);
  });
});

describe('walking a page', () => {
  const plan = 'plan "A"\n\npaint a = PW6 in linseed\n\nlayer one {\n  colour a\n}\n';

  test('puts declarations where they are to stand', () => {
    expect(after(plan, 'paint a', 'paint b = PB29 in linseed')).toContain(
      'in linseed\npaint b = PB29 in linseed\n\nlayer one',
    );
    expect(append(plan, 'varnish v {\n  resin damar\n}')).toMatch(
      /\n}\n\nvarnish v \{\n {2}resin damar\n}\n$/,
    );
    expect(instead(plan, ['layer one'], 'layer two {\n  colour a\n}')).toBe(plan.replace('one', 'two'));
    expect(instead(plan, ['paint a', 'layer one'], 'note "Gone."')).toBe('plan "A"\n\nnote "Gone."\n');
    expect(() => after(plan, 'paint z', '')).toThrow('There is no declaration ‘paint z’.');
  });

  test('shows the lines asked for, and that others are left out', () => {
    const output = 'One\n  first\n\nTwo\n  second\n  third\n\nlast\n';
    expect(chosen(output, undefined)).toBe(output.trimEnd());
    expect(chosen(output, ['Two'])).toBe('…\nTwo\n  second\n  third\n…');
    expect(chosen(output, ['second', 'One +1'])).toBe('One\n  first\n…\n  second\n…');
    expect(chosen(output, ['Two', 'last line'])).toBe('…\nTwo\n  second\n  third\n\nlast');
    expect(() => chosen(output, ['Three'])).toThrow('‘Three’ is not in the output');
  });
});
