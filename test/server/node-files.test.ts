import { execFileSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Use } from '../../language/src/plan/plan.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';

let root: string;
let outside: string;
beforeAll(() => {
  const base = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-files-')));
  root = join(base, 'workspace');
  outside = join(base, 'workspace-beside');
  for (const folder of [root, join(root, 'palettes'), join(root, 'folder.paintplan'), outside])
    mkdirSync(folder, { recursive: true });
  writeFileSync(join(root, 'palettes', 'earths.paintplan'), 'paint ochre = PY43 in linseed\n');
  writeFileSync(join(root, 'secret.txt'), 'not a plan');
  writeFileSync(join(outside, 'other.paintplan'), 'paint stolen = PY43 in linseed\n');
  writeFileSync(join(root, 'self.paintplan'), 'use "self.paintplan"\n');
  writeFileSync(join(root, 'one.paintplan'), 'use "two.paintplan"\n');
  writeFileSync(join(root, 'two.paintplan'), 'use "one.paintplan"\n');
  writeFileSync(join(root, 'large.paintplan'), '');
  truncateSync(join(root, 'large.paintplan'), 50 * 1024 * 1024);
  symlinkSync(join(outside, 'other.paintplan'), join(root, 'link.paintplan'));
  symlinkSync(outside, join(root, 'linked'));
  symlinkSync(join(root, 'palettes', 'earths.paintplan'), join(root, 'earths-link.paintplan'));
  symlinkSync(join(root, 'loop.paintplan'), join(root, 'loop.paintplan'));
});
afterAll(() => rmSync(join(root, '..'), { recursive: true, force: true }));

function used(path: string, from = 'plan.paintplan'): Use {
  const plan = readPlan(`use "${path}"\n`, pathToFileURL(join(root, from)).href, nodeHost([root]));
  return plan.uses[0] as Use;
}

describe('use on a disk', () => {
  test('reads a palette of the workspace', () => {
    const use = used('palettes/earths.paintplan');
    expect(use.status).toBe('read');
    expect(use.plan?.paints.map((p) => p.name)).toEqual(['ochre']);
    expect(used('./palettes/../palettes/earths.paintplan').status).toBe('read');
    expect(used('earths-link.paintplan').status).toBe('read');
  });

  test.each([
    '/etc/passwd',
    '../../../../etc/passwd',
    '../workspace-beside/other.paintplan',
    'link.paintplan',
    'linked/other.paintplan',
    'secret.txt',
    'file:///etc/passwd',
    'https://example.invalid/x.paintplan',
    'a\0b.paintplan',
  ])('%j is outside', (path) => expect(used(path).status).toBe('outside'));

  test('a missing file, a folder, a large one, itself, a circle', () => {
    expect(used('nowhere.paintplan').status).toBe('missing');
    expect(used('palettes/earths.paintplan/more.paintplan').status).toBe('missing');
    expect(used('folder.paintplan').status).toBe('unreadable');
    expect(used('large.paintplan')).toMatchObject({
      status: 'too-large',
      detail: expect.stringContaining('50'),
    });
    expect(used('self.paintplan', 'self.paintplan').status).toBe('cycle');
    const circle = used('two.paintplan', 'one.paintplan');
    expect(circle.status).toBe('read');
    expect(circle.plan?.uses[0]).toMatchObject({
      status: 'cycle',
      detail: 'one.paintplan → two.paintplan → one.paintplan',
    });
    expect(['unreadable', 'missing', 'outside']).toContain(used('loop.paintplan').status);
  });

  test.skipIf(process.platform === 'win32')('a pipe is refused and never waited for', () => {
    execFileSync('mkfifo', [join(root, 'pipe.paintplan')]);
    expect(used('pipe.paintplan').status).toBe('unreadable');
  });
});
