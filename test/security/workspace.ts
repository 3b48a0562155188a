/** A workspace with everything a hostile one may hold, and a folder beside it that must stay unseen. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

export interface Hostile {
  readonly workspace: string;
  readonly outside: string;
  /** paths for `use` that must not be read, with the rule that says so */
  readonly uses: readonly (readonly [path: string, rule: 'use-outside-workspace' | 'use-missing'])[];
}

export function hostileWorkspace(base: string): Hostile {
  const workspace = join(base, 'workspace');
  const outside = join(base, 'workspace-beside');
  for (const folder of [join(workspace, 'palettes'), join(workspace, 'folder.paintplan'), outside])
    mkdirSync(folder, { recursive: true });
  const put = (path: string, text: string | Buffer) => writeFileSync(join(base, path), text);
  put('workspace-beside/secret.paintplan', 'paint stolen = PY43 in linseed\n');
  put('workspace-beside/secret.txt', 'a secret\n');
  put('workspace/palettes/earths.paintplan', 'paint ochre = PY43 in linseed\n');
  put('workspace/closed.paintplan', 'use "../workspace-beside/secret.paintplan"\nlayer a { colour PB99 }\n');
  put('workspace/binary.paintplan', Buffer.from(Array.from({ length: 4096 }, (_, i) => (i * 37) % 256)));
  put('workspace/huge.paintplan', '');
  truncateSync(join(workspace, 'huge.paintplan'), 64 * 1024 * 1024);
  const link = (to: string, name: string) => symlinkSync(to, join(workspace, name));
  link(join(outside, 'secret.paintplan'), 'link.paintplan');
  link('../workspace-beside/secret.paintplan', 'short-link.paintplan');
  link('link.paintplan', 'link-to-link.paintplan');
  link(outside, 'linked');
  link('/dev/zero', 'zero.paintplan');
  link('.', 'loop');
  link('circle.paintplan', 'circle.paintplan');
  if (process.platform !== 'win32') execFileSync('mkfifo', [join(workspace, 'pipe.paintplan')]);
  const inside = ['binary', 'huge', 'folder', 'pipe', 'gone'].map(
    (n) => [`${n}.paintplan`, 'use-missing'] as const,
  );
  const beyond = [
    '../workspace-beside/secret.paintplan',
    'palettes/../../workspace-beside/secret.paintplan',
    '..\\\\workspace-beside\\\\secret.paintplan',
    join(outside, 'secret.paintplan'),
    pathToFileURL(join(outside, 'secret.paintplan')).href,
    'FILE:secret.paintplan',
    'http://example.invalid/secret.paintplan',
    'https://example.invalid/secret.paintplan',
    '\\\\\\\\host\\\\share\\\\secret.paintplan',
    '//host/share/secret.paintplan',
    'link.paintplan',
    'short-link.paintplan',
    'link-to-link.paintplan',
    'linked/secret.paintplan',
    'loop/../linked/secret.paintplan',
    'zero.paintplan',
    'circle.paintplan',
    '/dev/zero',
    '/proc/self/environ',
    'secret.txt',
  ].map((path) => [path, 'use-outside-workspace'] as const);
  // a percent sign is a letter of a name here, so these files are missing, not outside
  const percent = ['%2e%2e/workspace-beside/secret.paintplan', '%2Fetc%2Fhostname.paintplan'].map(
    (path) => [path, 'use-missing'] as const,
  );
  return { workspace, outside, uses: [...beyond, ...percent, ...inside] };
}

/** A plan with every `use`: one that is read, and all that must not be. */
export const usingAll = ({ uses }: Hostile): string =>
  `${['palettes/earths.paintplan', ...uses.map(([path]) => path)]
    .map((path) => `use "${path}"\n`)
    .join('')}plan "Invented"\nlayer wash { colour ochre }\n`;
