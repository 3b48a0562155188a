/** What the optical table rests on: every row says it, and who derives it anew is told what that needs. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { SOURCES } from '../../language/build/optics/table.ts';
import { opticalData } from '../../language/src/optics/data.ts';
import table from '../../language/src/optics/tables/pigments.json' with { type: 'json' };

const root = new URL('../..', import.meta.url).pathname;

describe('every row says what it came from', () => {
  test.each(table.pigments)('$id', ({ id, class: confidence, source, note }) => {
    const text = table.sources[source]!;
    // The classes are promises about the source (language/docs/colour.md): A is oil, B the acrylic set, C charts, D kin.
    const promised: Readonly<Record<string, string>> = {
      A: SOURCES['oil-films'],
      B: SOURCES.okumura,
      C: SOURCES['four-grounds'],
      D: SOURCES.kinship,
    };
    // a pigment added from swatches has its words from whoever measured them
    if (text === 'Measured swatches.') expect(note).toMatch(/\S{3}/);
    else expect(text).toBe(promised[confidence]);
    // of how many films, of which sorts, or from which relative
    expect(note).toMatch(confidence === 'D' ? /^From \S.*\.$/ : /^.{5,}\.$/);
    expect(opticalData(id)!.basis).toBe(`${text} ${note}`);
  });
  test('a relative is a row of the table too', () => {
    const ids = new Set(table.pigments.map((p) => p.id));
    for (const { id, note } of table.pigments.filter((p) => p.class === 'D'))
      for (const kin of note.slice('From '.length, -1).split(' and ')) expect(ids, id).toContain(kin);
  });
});

describe('deriving without the measured files', () => {
  const folder = mkdtempSync(join(tmpdir(), 'measured-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const shipped = join(root, 'language/src/optics/tables/pigments.json');
  const derive = () => {
    const before = readFileSync(shipped, 'utf8');
    const ran = spawnSync(process.execPath, ['language/build/optics/derive.ts', '--from', folder], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(readFileSync(shipped, 'utf8')).toBe(before);
    expect(ran.status).toBe(2);
    expect(ran.stderr).not.toContain('    at ');
    expect(ran.stderr).toContain('language/docs/colour.md');
    expect(ran.stderr).toContain('npm run add-pigment');
    return /Missing in (.*): (.*)\./.exec(ran.stderr)!;
  };
  test('says which are missing, and where they were looked for', () => {
    const [, where, files] = derive();
    expect(where).toBe(folder);
    expect(files!.split(', ')).toEqual([
      'oil_films_measured.csv',
      'okumura2005_ks.csv',
      'film_over_four_grounds.csv',
      'films_over_four_grounds_reflectance.csv',
    ]);
  });
  test('does not name what is there', () => {
    writeFileSync(join(folder, 'okumura2005_ks.csv'), '');
    expect(derive()[2]).not.toContain('okumura');
  });
});

test('the page says where each measured set is published, and under which licence', () => {
  const page = readFileSync(join(root, 'language/docs/colour.md'), 'utf8');
  for (const said of [
    'Geldof',
    'CC0',
    'Okumura',
    'Deborah',
    'CC BY 4.0',
    '10.1109/WHISPERS56178.2022.9955067',
  ])
    expect(page, said).toContain(said);
});
