/** Commands as they are typed: the tool itself, and git; `>` writes to a file. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { devNull } from 'node:os';
import { run } from '../cli/run.ts';

/** Nothing of the machine's own settings, and nobody's name. */
const GIT = {
  ...process.env,
  GIT_CONFIG_GLOBAL: devNull,
  GIT_CONFIG_SYSTEM: devNull,
  GIT_AUTHOR_NAME: 'A painter',
  GIT_AUTHOR_EMAIL: 'painter@example.org',
  GIT_COMMITTER_NAME: 'A painter',
  GIT_COMMITTER_EMAIL: 'painter@example.org',
};

async function one(line: string): Promise<string> {
  const [, command = '', file] = /^(.*?)(?: > (\S+))?$/.exec(line) ?? [];
  const words = [...command.matchAll(/"([^"]*)"|'([^']*)'|\S+/g)].map((m) => m[1] ?? m[2] ?? m[0]);
  // 1 is an answer of these: there are findings, there are differences
  const most = ['check', 'compare'].includes(words[2] ?? '') ? 1 : 0;
  const { code, out, err } = await (async () => {
    if (words[0] === 'npx' && words[1] === 'paintplan') return run(...words.slice(2));
    if (words[0] !== 'git') throw new Error(`‘${line}’ is neither npx paintplan nor git.`);
    const git = spawnSync('git', words.slice(1), { env: GIT, encoding: 'utf8' });
    return { code: git.status ?? 2, out: git.stdout, err: git.stderr };
  })();
  if (code > most) throw new Error(`‘${line}’ ends with ${code}: ${err}`);
  if (file === undefined) return out + err;
  writeFileSync(file, out);
  return err;
}

export async function typed(commands: string): Promise<string> {
  let printed = '';
  for (const line of commands.split('\n')) printed += await one(line);
  return printed;
}
