/** The built command line under the watch, and what it writes: only what is asked, whole or not at all. */
import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { astray, confined, installed, temporary, usedIn } from './watched.ts';
import { type Hostile, hostileWorkspace, usingAll } from './workspace.ts';

const here = dirname(fileURLToPath(import.meta.url));
let base: string;
let hostile: Hostile;
let folder: string;
beforeAll(() => {
  base = temporary();
  hostile = hostileWorkspace(base);
  folder = installed(join(base, 'bundles')).language;
  writeFileSync(join(hostile.workspace, 'plan.paintplan'), usingAll(hostile));
  writeFileSync(
    join(hostile.workspace, 'note.md'),
    [...hostile.uses.map(([path]) => path), 'palettes/earths.paintplan', 'closed.paintplan']
      .map((path) => `<!-- paintplan assumptions of "${path}" -->\n<!-- paintplan end -->\n`)
      .join('\n'),
  );
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

const env = { PATH: process.env.PATH, NODE_DISABLE_COMPILE_CACHE: '1' };
const program = () => join(folder, 'bin', 'paintplan.js');

function watched(...args: string[]) {
  const folders = [folder, hostile.workspace];
  const ran = spawnSync(process.execPath, [...confined(folders), program(), ...args], {
    cwd: hostile.workspace,
    env,
    encoding: 'utf8',
    timeout: 120_000,
  });
  const { used, rest } = usedIn(ran.stderr);
  return { code: ran.status, out: ran.stdout, said: rest, astray: astray(used, folders), used };
}

describe('under the watch, in a hostile workspace', () => {
  test.each([
    ['check', 'plan.paintplan'],
    ['check', 'plan.paintplan', '--format', 'sarif'],
    ['study', 'plan.paintplan'],
    ['report', 'plan.paintplan', '--to', 'html'],
    ['report', 'note.md', '--to', 'md'],
    ['match', 'plan.paintplan', '--target', '#8a5a3c'],
    ['compare', 'plan.paintplan', 'closed.paintplan'],
    ['format', '--check', 'plan.paintplan'],
    ['explain', 'PBr7'],
  ])('%s %s %s %s reads the folder only, and no stranger’s file', (...args) => {
    const went = watched(...args);
    expect(went.astray).toEqual([]);
    expect([0, 1]).toContain(went.code);
    expect(went.out + went.said).not.toMatch(/a secret|stolen/);
    expect(went.used.length).toBeGreaterThan(0);
  });

  test('check DIR walks into no link and no circle, and takes no pipe for a plan', () => {
    const clean = join(hostile.workspace, 'clean');
    mkdirSync(clean);
    writeFileSync(join(clean, 'a.paintplan'), 'layer a { colour PB99 }\n');
    symlinkSync(hostile.outside, join(clean, 'linked'));
    symlinkSync('.', join(clean, 'loop'));
    symlinkSync('/dev/zero', join(clean, 'zero.paintplan'));
    symlinkSync(join(hostile.outside, 'secret.paintplan'), join(clean, 'link.paintplan'));
    const went = watched('check', 'clean', '--format', 'json');
    expect(went.astray).toEqual([]);
    expect((JSON.parse(went.out) as { files: { path: string }[] }).files.map((f) => f.path)).toEqual([
      'clean/a.paintplan',
    ]);
    rmSync(clean, { recursive: true });
  });

  test('a pipe, a device and a folder named as a plan are refused at once', () => {
    for (const name of ['pipe.paintplan', '/dev/zero', 'huge.paintplan'])
      expect(watched('check', name).code, name).toBe(2);
  });

  test('a place of a note takes plans inside the folder only', () => {
    const { out, said } = watched('report', 'note.md', '--to', 'md');
    expect(said.match(/cannot be read as a plan/g)).toHaveLength(hostile.uses.length);
    expect(out.match(/<!-- paintplan end -->/g)).toHaveLength(hostile.uses.length + 2);
  });

  test('report --watch watches the folder and opens no socket', async () => {
    const output = join(hostile.workspace, 'watched');
    mkdirSync(output);
    const folders = [folder, hostile.workspace];
    const flags = [...confined(folders), `--allow-fs-write=${output}`];
    const child = spawn(
      process.execPath,
      [...flags, program(), 'report', 'closed.paintplan', '--to', 'html', '--watch', '--out', 'watched/'],
      { cwd: hostile.workspace, env, stdio: ['ignore', 'ignore', 'pipe'] },
    );
    let errors = '';
    child.stderr.on('data', (data) => {
      errors += data;
    });
    const written = () => errors.split('closed.paintplan → ').length - 1;
    await expect.poll(() => errors, { timeout: 60_000 }).toMatch(/Watching/);
    writeFileSync(join(hostile.workspace, 'closed.paintplan'), 'plan "Again"\nlayer a { colour PB99 }\n');
    await expect.poll(written, { timeout: 30_000 }).toBeGreaterThan(1);
    child.kill();
    const { used } = usedIn(errors);
    // what is written through a descriptor was opened by a call that names its file
    const beyond = astray(used, folders).filter(
      (a) => !a.includes(output) && !/^file writeFileSync descriptor \d+$/.test(a),
    );
    expect(beyond).toEqual([]);
    expect(used.some((u) => u.name === 'watch')).toBe(true);
    expect(readFileSync(join(output, 'closed.html'), 'utf8')).toMatch(/Again/);
  }, 180_000);
});

describe('writing', () => {
  const UNTIDY = 'area   sky 50%\nlayer a{on sky   colour PY43}\n';
  const TIDY = /^area sky 50 %\n/;
  let place: string;
  let plan: string;
  const run = (...args: string[]) =>
    spawnSync(process.execPath, [program(), ...args], { cwd: place, env, encoding: 'utf8', timeout: 60_000 });
  beforeEach(() => {
    place = temporary();
    plan = join(place, 'plan.paintplan');
    writeFileSync(plan, UNTIDY);
    return () => rmSync(place, { recursive: true, force: true });
  });

  test('format writes the named file only, keeps its rights, and leaves nothing beside it', () => {
    writeFileSync(join(place, 'other.paintplan'), UNTIDY);
    chmodSync(plan, 0o640);
    expect(run('format', 'plan.paintplan')).toMatchObject({ status: 0, stdout: 'plan.paintplan\n' });
    expect(readFileSync(plan, 'utf8')).toMatch(TIDY);
    expect(statSync(plan).mode & 0o777).toBe(0o640);
    expect(readFileSync(join(place, 'other.paintplan'), 'utf8')).toBe(UNTIDY);
    expect(readdirSync(place).sort()).toEqual(['other.paintplan', 'plan.paintplan']);
  });

  test('a link that is named stays a link; what it leads to is formatted', () => {
    symlinkSync('plan.paintplan', join(place, 'link.paintplan'));
    expect(run('format', 'link.paintplan').status).toBe(0);
    expect(lstatSync(join(place, 'link.paintplan')).isSymbolicLink()).toBe(true);
    expect(readFileSync(plan, 'utf8')).toMatch(TIDY);
  });

  test('a read-only file is left as it is, and said so', () => {
    chmodSync(plan, 0o444);
    const ran = run('format', 'plan.paintplan');
    expect([ran.status, readFileSync(plan, 'utf8')]).toEqual([2, UNTIDY]);
    expect(ran.stderr).toMatch(/plan\.paintplan cannot be written: it is read-only/);
    chmodSync(plan, 0o644);
  });

  // the kernel's own limit on the size of a file ends the program in the middle of writing, as a crash would
  test.skipIf(process.platform === 'win32')('an end in the middle of writing loses nothing', () => {
    const long = UNTIDY + '# a remark that makes the file long\n'.repeat(20_000);
    writeFileSync(plan, long);
    const limited = spawnSync(
      'sh',
      ['-c', `ulimit -f 64; exec "${process.execPath}" "${program()}" format plan.paintplan`],
      {
        cwd: place,
        env,
        encoding: 'utf8',
      },
    );
    expect(limited.status).not.toBe(0);
    expect(readFileSync(plan, 'utf8')).toBe(long);
  });

  test('a full disk loses nothing, leaves nothing, and is said', () => {
    const ran = spawnSync(
      process.execPath,
      ['--require', join(here, 'full-disk.cjs'), program(), 'format', 'plan.paintplan'],
      { cwd: place, env, encoding: 'utf8' },
    );
    expect([ran.status, readFileSync(plan, 'utf8')]).toEqual([2, UNTIDY]);
    expect(ran.stderr).toMatch(/cannot be written: the disk is full/);
    expect(readdirSync(place)).toEqual(['plan.paintplan']);
  });

  test('text that is not UTF-8 is left as it is, in plans and in notes', () => {
    const bytes = Buffer.concat([Buffer.from(UNTIDY), Buffer.from([0x23, 0x20, 0xe9, 0x0a])]);
    writeFileSync(plan, bytes);
    const ran = run('format', 'plan.paintplan');
    expect([ran.status, readFileSync(plan).equals(bytes)]).toEqual([2, true]);
    expect(ran.stderr).toMatch(/not UTF-8/);
    const note = join(place, 'note.md');
    writeFileSync(
      note,
      Buffer.concat([
        Buffer.from([0xe9, 0x0a]),
        Buffer.from('<!-- paintplan layers of "plan.paintplan" -->\n<!-- paintplan end -->\n'),
      ]),
    );
    const before = readFileSync(note);
    expect(run('report', 'note.md', '--to', 'md', '--out', 'note.md').status).toBe(2);
    expect(readFileSync(note).equals(before)).toBe(true);
  });

  test('a report is not written through a link that a stranger’s folder holds', () => {
    mkdirSync(join(place, 'reports'));
    writeFileSync(join(place, 'precious'), 'kept');
    symlinkSync('../precious', join(place, 'reports', 'plan.html'));
    const ran = run('report', 'plan.paintplan', '--to', 'html', '--out', 'reports/');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(/it is a link/);
    expect(readFileSync(join(place, 'precious'), 'utf8')).toBe('kept');
    // a place that is named outright is the user's own choice
    symlinkSync('precious', join(place, 'mine.html'));
    expect(run('report', 'plan.paintplan', '--to', 'html', '--out', 'mine.html').status).toBeLessThan(2);
    expect(readFileSync(join(place, 'precious'), 'utf8')).toMatch(/<!DOCTYPE html>/);
  });

  test('a device may be written to', () => {
    if (existsSync('/dev/null'))
      expect(run('report', 'plan.paintplan', '--to', 'html', '--out', '/dev/null').status).toBeLessThan(2);
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });
});
