/** What the world around a command can do to it: one line, exit 2, the rest still done, and never a stack trace. */
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run, shell, spawned } from './run.ts';

const PLAN = 'plan "A"\nground   g1 { material acrylic }\n';
let place: string;
beforeAll(() => {
  place = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-ends-')));
  chmodSync(place, 0o777);
  writeFileSync(join(place, 'a.paintplan'), PLAN);
  symlinkSync('loop.paintplan', join(place, 'loop.paintplan'));
  mkdirSync(join(place, 'folder.paintplan'));
});
afterAll(() => rmSync(place, { recursive: true, force: true }));

const LONG = `${'x'.repeat(300)}.paintplan`;
const STACK = /\n\s+at |node:|Error:/;
const sh = (script: string) => shell(script, { cwd: place });
const loaded = (name: string) => ({
  ...process.env,
  NODE_OPTIONS: `--require ${fileURLToPath(new URL(name, import.meta.url))}`,
});

/** In this process, from there. */
async function here(...args: string[]) {
  const from = process.cwd();
  process.chdir(place);
  try {
    return await run(...args);
  } finally {
    process.chdir(from);
  }
}
const one = (err: string) => {
  expect(err).not.toMatch(STACK);
  return err.trimEnd().split('\n').length;
};

describe('a file that cannot be read', () => {
  test.each([
    ['is not there', 'gone.paintplan', /no file gone\.paintplan/],
    ['is a circle of links', 'loop.paintplan', /loop\.paintplan cannot be read: its links lead in a circle/],
    ['has too long a name', LONG, /x\.paintplan cannot be read: its name is too long/],
    ['lies below a file', 'a.paintplan/b.paintplan', /a\.paintplan\/b\.paintplan/],
  ])(
    'that %s',
    (_, name, said) => {
      for (const args of [
        ['check', name],
        ['study', name],
        ['report', name, '--to', 'html'],
        ['report', `${name}.md`, '--to', 'md'],
        ['match', name, '--target', '#888'],
        ['compare', 'a.paintplan', name],
        ['compare', name, 'a.paintplan'],
        ['format', name],
        ['format', `${name}.md`],
      ]) {
        const { code, out, err } = spawned(args, { cwd: place });
        expect([code, out, one(err)], args[0]).toEqual([2, '', 1]);
        if (args.includes(name)) expect(err).toMatch(said);
      }
    },
    120_000,
  );

  test('a folder to watch that is not there', () => {
    const { code, err } = spawned(['report', 'gone/x.paintplan', '--to', 'html', '--watch'], { cwd: place });
    expect([code, one(err)]).toEqual([2, 2]);
    expect(err).toMatch(/^gone cannot be watched: there is no such file or folder\.$/m);
  });

  test('keeps no other from being checked, reported and formatted', async () => {
    const names = ['gone.paintplan', 'loop.paintplan', 'a.paintplan'];
    const checked = await here('check', ...names, '--format', 'json');
    expect([checked.code, one(checked.err)]).toEqual([2, 2]);
    expect(JSON.parse(checked.out).files.map((f: { path: string }) => f.path)).toEqual(['a.paintplan']);
    const reported = await here('report', ...names, '--to', 'html', '--out', 'out/');
    expect([reported.code, one(reported.err)]).toEqual([2, 3]);
    expect(readFileSync(join(place, 'out/a.html'), 'utf8')).toMatch(/<h1>A</);
    writeFileSync(join(place, 'b.paintplan'), PLAN);
    const formatted = await here('format', 'gone.paintplan', 'b.paintplan');
    expect([formatted.code, formatted.out, one(formatted.err)]).toEqual([2, 'b.paintplan\n', 1]);
    expect(readFileSync(join(place, 'b.paintplan'), 'utf8')).toMatch(/^ground g1/m);
  });

  test('a plan over the size that is read stands in the way of no other', async () => {
    const walked = join(place, 'sizes');
    mkdirSync(walked);
    writeFileSync(join(walked, 'a.paintplan'), PLAN);
    writeFileSync(join(walked, 'big.paintplan'), '');
    truncateSync(join(walked, 'big.paintplan'), 17 * 1024 * 1024);
    const { code, out, err } = await here('check', 'sizes');
    expect([code, out, one(err)]).toEqual([2, 'Nothing to report\n', 1]);
    expect(err).toMatch(/big\.paintplan holds 18 MB; a plan over 16 MB is not read/);
  });
});

/** Root may read everything: what rights forbid is tried as somebody else. */
const plain = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
const mayBecome = process.platform !== 'win32' && spawned(['--version'], plain).code === 0;

describe.runIf(mayBecome)('what rights forbid', () => {
  const as = (...args: string[]) => spawned(args, { cwd: place, ...plain });

  test('a file: the others are checked', () => {
    const path = join(place, 'secret.paintplan');
    writeFileSync(path, PLAN);
    chmodSync(path, 0o000);
    const { code, out, err } = as('check', 'secret.paintplan', 'a.paintplan');
    expect([code, out, one(err)]).toEqual([2, 'Nothing to report\n', 1]);
    expect(err).toMatch(/secret\.paintplan cannot be read: its permissions forbid it/);
  });

  test('a folder in a walk: the rest is walked', () => {
    mkdirSync(join(place, 'walk/b-closed'), { recursive: true });
    for (const folder of ['a-open', 'c-open']) {
      mkdirSync(join(place, 'walk', folder));
      writeFileSync(join(place, 'walk', folder, 'x.paintplan'), PLAN);
    }
    chmodSync(join(place, 'walk/b-closed'), 0o000);
    for (const command of ['check', 'report']) {
      const more = command === 'check' ? ['--format', 'json'] : ['--to', 'html', '--out', 'walked/'];
      const { code, out, err } = as(command, 'walk', ...more);
      expect(code).toBe(2);
      expect(err).toMatch(/^walk\/b-closed cannot be read: its permissions forbid it\.$/m);
      expect(err).not.toMatch(STACK);
      if (command === 'check') expect(JSON.parse(out).files).toHaveLength(2);
      else
        for (const f of ['a-open', 'c-open'])
          expect(existsSync(join(place, 'walked', f, 'x.html'))).toBe(true);
    }
    expect(as('check', 'walk/b-closed')).toMatchObject({ code: 2, out: '' });
  });

  test('writing: what is there stays, and is named', () => {
    mkdirSync(join(place, 'mine'));
    writeFileSync(join(place, 'mine/a.paintplan'), PLAN);
    writeFileSync(join(place, 'mine/a.html'), 'kept');
    chmodSync(join(place, 'mine/a.paintplan'), 0o644);
    for (const args of [
      ['format', 'mine/a.paintplan'],
      ['report', 'a.paintplan', '--to', 'html', '--out', 'mine/a.html'],
      ['report', 'a.paintplan', '--to', 'html', '--out', 'mine/new/'],
      ['report', 'a.paintplan', '--to', 'md', '--out', 'mine/'],
    ]) {
      const { code, err } = as(...args);
      expect([code, one(err)], args.join(' ')).toEqual([2, 1]);
      expect(err).toMatch(/mine.* cannot be written: its permissions forbid it/);
    }
    expect(readFileSync(join(place, 'mine/a.paintplan'), 'utf8')).toBe(PLAN);
    expect(readFileSync(join(place, 'mine/a.html'), 'utf8')).toBe('kept');
  });
});

describe('a place that cannot be written', () => {
  test.each([
    ['a folder where a file is wanted', 'folder.html/x/y/', /folder\.html/],
    ['too long a name', `${'y'.repeat(300)}.html`, /its name is too long/],
    ['a circle of links', 'circle.html', /its links lead in a circle/],
    ['a file where a folder is wanted', 'a.paintplan/x.html', /a\.paintplan/],
    ['a file with a slash behind it', 'file/', /file/],
  ])('%s', async (_, out, said) => {
    mkdirSync(join(place, 'folder.html'), { recursive: true });
    writeFileSync(join(place, 'file'), 'kept');
    symlinkSync('circle.html', join(place, 'circle.html'));
    const { code, err } = await here('report', 'a.paintplan', '--to', 'html', '--out', out);
    expect([code, one(err)]).toEqual([2, 1]);
    expect(err).toMatch(said);
    expect(readFileSync(join(place, 'file'), 'utf8')).toBe('kept');
    rmSync(join(place, 'circle.html'));
  });
});

/** What `report` says of each file. */
const SUM = /^.*: \d+ errors?, \d+ warnings?\n/m;

const FULL = '/dev/full';
describe.runIf(existsSync(FULL))('a full disk', () => {
  test.each([
    'check a.paintplan',
    'check a.paintplan --format json',
    'study a.paintplan',
    'report a.paintplan --to html',
    'compare a.paintplan a.paintplan',
    'format - < a.paintplan',
    'explain PB29',
    '--help',
    '--version',
    'report --help',
  ])('below standard output: %s', (command) => {
    const { code, err: said } = sh(`paintplan ${command} > ${FULL}`);
    const err = said.replace(SUM, '');
    expect([code, one(err)]).toEqual([2, 1]);
    expect(err).toBe('Standard output cannot be written: the disk is full.\n');
  });

  test('below --out', () => {
    const { code, err } = sh(`paintplan report a.paintplan --to html --out ${FULL}`);
    expect([code, one(err)]).toEqual([2, 1]);
    expect(err).toMatch(/\/dev\/full cannot be written: the disk is full/);
  });

  test('below standard error changes nothing', () => {
    expect(sh(`paintplan check gone.paintplan a.paintplan 2> ${FULL}`)).toMatchObject({
      code: 2,
      out: 'Nothing to report\n',
    });
  });
});

describe.skipIf(process.platform === 'win32')('a reader that goes away', () => {
  test.each([
    ['check', 'examples/faulty'],
    ['study', 'examples/still-life.paintplan'],
    ['study', 'examples/still-life.paintplan', '--format', 'json'],
    ['report', 'examples/still-life.paintplan', '--to', 'html'],
    ['explain', 'PB29'],
    ['--help'],
  ])('is no fault: %s %s %s %s', (...args) => {
    // long enough away that everything written meets a closed pipe
    const { err } = shell(`paintplan ${args.join(' ')} | true; echo "\${PIPESTATUS[0]}" >&2`);
    expect(err.replace(SUM, '')).toMatch(args[0] === 'check' ? /^1\n$/ : /^0\n$/);
  });
});

describe('standard input', () => {
  test.skipIf(process.platform === 'win32')('that is a folder', () => {
    const { code, err } = sh('paintplan check - < folder.paintplan');
    expect([code, one(err)]).toEqual([2, 1]);
    expect(err).toMatch(/^Standard input cannot be read: it is a folder\.$/m);
  });

  test('that has nothing yet is waited for', () => {
    const { code, out, err } = spawned(['check', '-'], { input: PLAN, env: loaded('nothing-yet.cjs') });
    expect([code, out, err]).toEqual([0, 'Nothing to report\n', '']);
  });

  test('beyond the size that is read', () => {
    const { code, out, err } = spawned(['check', '-', 'a.paintplan'], {
      cwd: place,
      input: ' '.repeat(16 * 1024 * 1024 + 1),
    });
    expect([code, out, one(err)]).toEqual([2, 'Nothing to report\n', 1]);
    expect(err).toMatch(/^Standard input holds over 16 MB; more is not read\.$/m);
  });

  test('of just that size', () => {
    const text = `${PLAN}${' '.repeat(16 * 1024 * 1024 - PLAN.length)}`;
    expect(spawned(['check', '-'], { input: text })).toEqual({
      code: 0,
      out: 'Nothing to report\n',
      err: '',
    });
  });

  test('cannot be watched', () => {
    expect(spawned(['report', '-', '--to', 'html', '--watch']).code).toBe(2);
  });
});

test.skipIf(process.platform === 'win32')('a working folder that is gone', () => {
  const { code, err } = shell('d=$(mktemp -d); cd "$d"; rmdir "$d"; paintplan check .');
  expect([code, one(err)]).toEqual([2, 1]);
});

test('a fault of our own is one line, too, and says that it is ours', () => {
  const { code, err } = spawned(['explain', 'PB29'], { env: loaded('broken.cjs') });
  expect([code, one(err)]).toEqual([2, 1]);
  expect(err).toMatch(/fault of paintplan itself.*a broken wheel/);
});
