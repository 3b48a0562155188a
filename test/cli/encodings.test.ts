/**
 * Files in other encodings: one message that says so, wherever they are read. Bytes of ISO 8859-1 (Latin-1) and UTF-16
 * are made by Node's Buffer; what is valid UTF-8 follows the Unicode Standard, table 3-7.
 */
import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createAnalyser } from '../../language/src/analyse.ts';
import { decoded } from '../../language/src/plan/encoding.ts';
import { nodeHost } from '../../language/src/server/node-files.ts';
import { run, spawned } from './run.ts';

const TEXT = 'plan "Später Garten"\nnote "Öl auf Leinwand"\npaint ochre = PY43 in linseed\n';
const swapped = (text: string) => Buffer.from(text, 'utf16le').swap16();
const MARK = '\ufeff';

const CASES: readonly (readonly [name: string, bytes: Buffer, said: RegExp])[] = [
  ['Latin-1', Buffer.from(TEXT, 'latin1'), /line 1.*byte E4.*‘ä’ in Latin-1/],
  ['UTF-16 with its mark', Buffer.from(MARK + TEXT, 'utf16le'), /UTF-16/],
  ['UTF-16 without its mark', Buffer.from(TEXT, 'utf16le'), /UTF-16/],
  ['UTF-16, big end first', swapped(MARK + TEXT), /UTF-16/],
  ['UTF-16, big end first, without its mark', swapped(TEXT), /UTF-16/],
  // table 3-7: surrogates, an overlong form, a lone continuation, beyond U+10FFFF, one cut short
  ...[[0xed, 0xa0, 0x80], [0xc0, 0xaf], [0x80], [0xf4, 0x90, 0x80, 0x80], [0xe2, 0x82]].map(
    (bad) =>
      [
        `bytes ${Buffer.from(bad).toString('hex')}`,
        Buffer.concat([Buffer.from('plan "A"\nnote "ä '), Buffer.from(bad), Buffer.from('"\n')]),
        new RegExp(`line 2.*byte ${Buffer.from(bad).toString('hex').slice(0, 2).toUpperCase()}`),
      ] as const,
  ),
  ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49]), /byte 89/],
];

let place: string;
beforeAll(() => {
  place = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-encodings-')));
});
afterAll(() => rmSync(place, { recursive: true, force: true }));
const put = (name: string, bytes: Buffer | string) => {
  writeFileSync(join(place, name), bytes);
  return join(place, name);
};

describe.each(CASES)('%s', (_, bytes, said) => {
  test('as a file of a command: one message, exit 2, and the file as it was', async () => {
    const path = put('other.paintplan', bytes);
    const note = put('other.md', bytes);
    for (const args of [
      ['check', path],
      ['study', path],
      ['report', path, '--to', 'html'],
      ['report', note, '--to', 'md', '--out', note],
      ['match', path, '--target', '#888'],
      ['compare', path, path],
      ['format', path],
      ['format', note],
    ]) {
      const { code, out, err } = await run(...args);
      expect([code, out, err.trimEnd().split('\n').length], args.join(' ')).toEqual([2, '', 1]);
      expect(err).toMatch(/other\.(paintplan|md) is not UTF-8/);
      expect(err).toMatch(said);
      expect(err).toMatch(/Save it as UTF-8/);
      expect(readFileSync(path).equals(bytes) && readFileSync(note).equals(bytes)).toBe(true);
    }
  });

  test('as a file that is used: one finding', () => {
    put('other.paintplan', bytes);
    const { plan, findings } = createAnalyser()(
      'use "other.paintplan"\nplan "A"\nlayer a { colour ochre }\n',
      pathToFileURL(join(place, 'a.paintplan')).href,
      nodeHost([place]),
    );
    expect(plan.uses[0]?.status).toBe('unreadable');
    const found = findings().filter((f) => f.severity === 'error');
    expect(found.map((f) => f.rule)).toEqual(['use-missing']);
    expect(found[0]?.message).toMatch(said);
  });
});

test('on standard input', () => {
  const { code, out, err } = spawned(['check', '-'], { input: Buffer.from(TEXT, 'latin1') as never });
  expect([code, out]).toEqual([2, '']);
  expect(err).toMatch(/^Standard input is not UTF-8 text.*‘ä’ in Latin-1/);
});

test('UTF-8 is read whole, with its mark or without', async () => {
  const every = `${TEXT}note "€ 𝄞 \u{10ffff} \u0800 \ud7ff \ue000"\n`;
  expect(decoded(Buffer.from(every))).toEqual({ text: every });
  expect(decoded(Buffer.from(MARK + every))).toEqual({ text: MARK + every });
  expect(decoded(new Uint8Array())).toEqual({ text: '' });
  const path = put('marked.paintplan', `${MARK}plan   "A"\n`);
  expect((await run('format', path)).code).toBe(0);
  expect(readFileSync(path, 'utf8')).toBe(`${MARK}plan "A"\n`);
});

test('a character of two bytes on the border of two reads stays whole', () => {
  const text = `plan "A"\n// ${'ä'.repeat(40_000)}${'€'.repeat(40_001)}\n`;
  expect(spawned(['format', '-'], { input: text }).out).toBe(text);
});
