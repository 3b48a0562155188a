/** Where `report` writes: never over an input or a plan, never two reports into one file, no folder nobody asked for. */
import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { files, run } from './run.ts';

const NOTE = '# Kept\n\n```paintplan\nplan "In a note"\nground g1 { material acrylic }\n```\n';
const plan = (title: string) => `plan "${title}"\nground g1 { material acrylic }\n`;

let place: string;
const here = process.cwd();
beforeEach(() => {
  place = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-reports-')));
  process.chdir(place);
  return () => {
    process.chdir(here);
    rmSync(place, { recursive: true, force: true });
  };
});
const put = (path: string, text: string) => {
  mkdirSync(join(place, path, '..'), { recursive: true });
  writeFileSync(join(place, path), text);
};
const read = (path: string) => readFileSync(join(place, path), 'utf8');
const one = (err: string) => err.trimEnd().split('\n').length;

describe('a target that is an input or a plan', () => {
  test.each([
    ['itself', 'a.paintplan'],
    ['by another way', './sub/../a.paintplan'],
    ['by a link', 'link.html'],
    ['by a second name of the same file', 'hard.html'],
    ['another plan', 'other.paintplan'],
    ['a plan that is not there yet', 'new.paintplan'],
    ['a plan in capitals', 'NEW.PAINTPLAN'],
    ['a link to another plan', 'other.html'],
  ])('%s (%s) is refused and kept', async (_, out) => {
    put('a.paintplan', plan('A'));
    put('other.paintplan', plan('Other'));
    mkdirSync('sub');
    symlinkSync('a.paintplan', 'link.html');
    linkSync('a.paintplan', 'hard.html');
    symlinkSync('other.paintplan', 'other.html');
    const { code, err } = await run('report', 'a.paintplan', '--to', 'html', '--out', out);
    expect([code, one(err)]).toEqual([2, 1]);
    expect(err).toContain(out);
    expect([read('a.paintplan'), read('other.paintplan')]).toEqual([plan('A'), plan('Other')]);
    expect(files('.', 'new.paintplan')).toEqual([]);
  });

  test('a note among several files keeps its words', async () => {
    put('note.md', NOTE);
    put('a.paintplan', plan('A'));
    for (const out of [[], ['--out', '.']]) {
      const { code, err } = await run('report', 'note.md', 'a.paintplan', '--to', 'md', ...out);
      expect(code).toBe(2);
      expect(err).toMatch(/note\.md/);
      expect(read('note.md')).toBe(NOTE);
      expect(read('a.md')).toMatch(/^# A\n/);
    }
  });

  test('a drawing beside a report does not take an input’s place', async () => {
    put('a.paintplan', `${plan('A')}glaze g2 { colour PY150   film 8 µm }\n`);
    put('a-section.svg', plan('Oddly named'));
    const { code } = await run('report', 'a.paintplan', 'a-section.svg', '--to', 'md', '--out', '.');
    expect([code, read('a-section.svg')]).toEqual([2, plan('Oddly named')]);
  });

  test('a note is filled in its own place, which is what filling is', async () => {
    put('note.md', `${NOTE}\n<!-- paintplan layers -->\n<!-- paintplan end -->\n`);
    expect((await run('report', 'note.md', '--to', 'md', '--out', 'note.md')).code).toBe(0);
    expect(read('note.md')).toMatch(/ground g1/);
  });
});

describe('folders', () => {
  test('below a walked folder are kept below --out', async () => {
    put('plans/x.paintplan', plan('Upper'));
    put('plans/sub/x.paintplan', plan('Lower'));
    expect((await run('report', 'plans', '--to', 'html', '--out', 'reports/')).code).toBe(0);
    expect(files('reports', '.html')).toEqual(['reports/sub/x.html', 'reports/x.html']);
    expect([read('reports/x.html'), read('reports/sub/x.html')]).toEqual([
      expect.stringMatching(/<h1>Upper</),
      expect.stringMatching(/<h1>Lower</),
    ]);
  });

  test('of files named one by one are kept from where they part', async () => {
    put('one/x.paintplan', plan('One'));
    put('two/deep/x.paintplan', plan('Two'));
    const out = join(place, 'reports/');
    expect((await run('report', 'one/x.paintplan', 'two/deep', '--to', 'svg', '--out', out)).code).toBe(0);
    expect(files('reports', '.svg')).toEqual(['reports/one/x.svg', 'reports/two/deep/x.svg']);
  });

  test('two inputs that would share a file: the first has it, the other is refused', async () => {
    put('x.paintplan', plan('Plan'));
    put('x.md', NOTE);
    const { code, err } = await run('report', 'x.paintplan', 'x.md', '--to', 'html', '--out', 'reports/');
    expect(code).toBe(2);
    expect(err).toMatch(/x\.md.*reports\/x\.html.*x\.paintplan/);
    expect(read('reports/x.html')).toMatch(/<h1>Plan</);
  });

  test('a file named twice is written once', async () => {
    put('x.paintplan', plan('Plan'));
    const { code, err } = await run('report', '.', 'x.paintplan', '--to', 'html', '--out', 'reports/');
    expect([code, one(err)]).toEqual([0, 1]);
  });

  test('a new one is made beside what is there, and no deeper', async () => {
    put('x.paintplan', plan('Plan'));
    expect((await run('report', 'x.paintplan', '--to', 'html', '--out', 'new/x.html')).code).toBe(0);
    for (const out of ['gone/deeper/', 'gone/deeper/x.html', join(place, 'gone/deeper/x.html')]) {
      const { code, err } = await run('report', 'x.paintplan', '--to', 'html', '--out', out);
      expect([code, one(err)]).toEqual([2, 1]);
      expect(err).toMatch(/gone/);
    }
    expect(existsSync('gone')).toBe(false);
  });

  test('of a stranger’s that is a link leads nowhere', async () => {
    put('plans/sub/x.paintplan', plan('Lower'));
    put('plans/x.paintplan', plan('Upper'));
    mkdirSync('outside');
    mkdirSync('reports');
    symlinkSync('../outside', 'reports/sub');
    const { code, err } = await run('report', 'plans', '--to', 'html', '--out', 'reports/');
    expect(code).toBe(2);
    expect(err).toMatch(/reports\/sub.*link/);
    expect(files('outside', '.html')).toEqual([]);
    expect(read('reports/x.html')).toMatch(/<h1>Upper</);
  });
});

describe('an ending that contradicts --to', () => {
  test.each([
    ['html', 'a.md'],
    ['md', 'a.html'],
    ['csv', 'photo.jpg'],
    ['json', 'a.svg'],
    ['ics', 'a.txt'],
  ])('--to %s --out %s is refused', async (to, out) => {
    put('a.paintplan', `${plan('A')}start 2027-01-11\n`);
    put(out, 'kept');
    const { code, err } = await run('report', 'a.paintplan', '--to', to, '--out', out);
    expect([code, one(err), read(out)]).toEqual([2, 1, 'kept']);
    expect(err).toMatch(new RegExp(`\\.${to}`));
  });

  test.each([
    ['html', 'a.htm'],
    ['html', 'a.HTML'],
    ['md', 'a.markdown'],
    ['svg', 'without-ending'],
    ['svg', 'a.v2'],
  ])('--to %s --out %s is written', async (to, out) => {
    put('a.paintplan', plan('A'));
    expect((await run('report', 'a.paintplan', '--to', to, '--out', out)).code).toBe(0);
    expect(read(out).length).toBeGreaterThan(100);
  });
});

test('one plan that makes no report keeps no other from it', async () => {
  put('a.paintplan', plan('No dates'));
  put('b.paintplan', `${plan('Dated')}start 2027-01-11\n`);
  const { code, err } = await run('report', '.', '--to', 'ics', '--out', 'reports/');
  expect(code).toBe(2);
  expect(err).toMatch(/a\.paintplan has no dates/);
  expect(files('reports', '.ics')).toEqual(['reports/b.ics']);
});

test('a plan with a long name is written, though no longer name would be', async () => {
  const name = 'x'.repeat(240);
  put(`${name}.paintplan`, plan('Long'));
  expect((await run('report', `${name}.paintplan`, '--to', 'html', '--out', '.')).code).toBe(0);
  expect(read(`${name}.html`)).toMatch(/<h1>Long</);
});

test('one line a file on standard error tells its errors and warnings', async () => {
  put('sound.paintplan', plan('Sound'));
  put('broken.paintplan', `${plan('Broken')}layer l1 { colour nothing }\nlayer l2 { colour nowhere }\n`);
  const { err } = await run('report', 'sound.paintplan', 'broken.paintplan', '--to', 'md', '--out', 'out/');
  expect(err.trimEnd().split('\n').sort()).toEqual([
    'broken.paintplan → out/broken.md: 2 errors, 0 warnings',
    'sound.paintplan → out/sound.md: 0 errors, 0 warnings',
  ]);
  expect((await run('report', 'broken.paintplan', '--to', 'csv')).err).toBe(
    'broken.paintplan: 2 errors, 0 warnings\n',
  );
});

describe('sitting cards', () => {
  const dated = `${plan('A').replace('ground', 'start 2027-01-11\nground')}glaze g2 { colour PY150   film 8 µm }\n`;
  const card = (...more: string[]) => run('report', 'a.paintplan', '--to', 'card', ...more);

  test('all of them, or the one of a number or a day', async () => {
    put('a.paintplan', dated);
    const sittings = async (...more: string[]) => {
      const { code, out } = await card(...more);
      expect(code).toBe(0);
      return Array.from(out.matchAll(/<h2>Sitting (\d)/g), ([, n]) => n);
    };
    expect(await sittings()).toEqual(['1', '2']);
    expect(await sittings('--sitting', '2')).toEqual(['2']);
    expect(await sittings('--date', '2027-01-11')).toEqual(['1']);
  });

  test('stand beside the page of their plan', async () => {
    put('a.paintplan', dated);
    for (const kind of ['html', 'card'])
      expect((await run('report', '.', '--to', kind, '--out', 'reports/')).code).toBe(0);
    expect(files('reports', '.html')).toEqual(['reports/a.card.html', 'reports/a.html']);
    const { code, err } = await card('--out', 'a.card');
    expect([code, err.trim()]).toEqual([
      2,
      'a.card is not written: a report --to card does not end in .card. Name a file that ends in .html.',
    ]);
  });

  test('of a plan with errors say so at the top, and the command ends with 1', async () => {
    put('a.paintplan', `${dated}glaze g3 { colour no-such }\nglaze g4 { colour PY150 }\n`);
    const { code, out } = await card();
    expect(code).toBe(1);
    expect(out.match(/class="notice">There is an error in this text \(/g)).toHaveLength(4);
    expect(out).toContain('day not known');
  });

  test.each([
    [
      'a sitting that is not there',
      ['--sitting', '3'],
      /^a\.paintplan has no sitting 3: it has 2 sittings\.$/,
    ],
    [
      'a day between',
      ['--date', '2027-01-12'],
      /^a\.paintplan has no sitting on 2027-01-12: sitting 1 is on /,
    ],
    ['no number', ['--sitting', '0'], /1 or more/],
    ['no day', ['--date', 'tomorrow'], /must be a date such as 2027-01-26/],
    ['both', ['--sitting', '1', '--date', '2027-01-11'], /cannot be used with/],
  ])('%s is one line, and nothing is written', async (_, more, said) => {
    put('a.paintplan', dated);
    const { code, out, err } = await card(...more, '--out', 'card.html');
    expect([code, one(err), out]).toEqual([2, 1, '']);
    expect(err.trim()).toMatch(said);
    expect(existsSync('card.html')).toBe(false);
  });

  test('of a record, a palette, or as another kind of report: one line', async () => {
    put('r.paintplan', 'record "R"\nlayer a { colour unknown }\n');
    put('p.paintplan', 'palette "P"\npaint a = PW6 in linseed\n');
    put('a.paintplan', dated);
    for (const [said, ...args] of [
      ['r.paintplan is a record', 'r.paintplan', '--to', 'card'],
      ['p.paintplan is a palette', 'p.paintplan', '--to', 'card'],
      ['Only a report --to card', 'a.paintplan', '--to', 'html', '--sitting', '1'],
    ]) {
      const { code, out, err } = await run('report', ...args);
      expect([code, one(err), out]).toEqual([2, 1, '']);
      expect(err).toContain(said);
    }
  });
});
