/** What the bundles hold in the place of tables, of the grammar and of libraries’ parts answers as those do. */
import { readdirSync, readFileSync } from 'node:fs';
import { build, type Plugin } from 'esbuild';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leftOut, namedTypes } from '../../language/build/left-out.ts';
import * as lists from '../../language/build/lists.ts';
import { pack, packCurve } from '../../language/build/pack.ts';
import { packedData } from '../../language/build/packed.ts';
import { unpack, unpackCurve } from '../../language/build/unpack.ts';
import { PaintplanGrammar } from '../../language/generated/grammar.ts';

const root = new URL('../..', import.meta.url).pathname;

/** What a module exports once it is bundled. */
async function bundled(code: string, ...plugins: Plugin[]): Promise<Record<string, unknown>> {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: root, loader: 'ts' },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    plugins,
  });
  return import(
    `data:text/javascript;base64,${Buffer.from(outputFiles[0]?.contents ?? '').toString('base64')}`
  );
}

const tables = ['materials', 'optics'].flatMap((room) =>
  readdirSync(`${root}language/src/${room}/tables`)
    .filter((f) => f.endsWith('.json'))
    .map((f) => `language/src/${room}/tables/${f}`),
);

test('every table is the same to the last figure', async () => {
  const code = tables.map((path, i) => `export { default as t${i} } from './${path}';`).join('\n');
  const packed = await bundled(code, packedData);
  expect(tables.length).toBeGreaterThan(10);
  for (const [i, path] of tables.entries())
    expect(JSON.parse(JSON.stringify(packed[`t${i}`])), path).toEqual(
      JSON.parse(readFileSync(root + path, 'utf8')),
    );
});

test('the grammar is the same', async () => {
  const packed = await bundled(
    `import { PaintplanGrammar } from './language/generated/grammar.ts';
     export const rules = PaintplanGrammar().rules.map((r) => [r.$type, r.name]);`,
    leftOut,
    packedData,
  );
  expect(packed.rules).toEqual(PaintplanGrammar().rules.map((r) => [r.$type, r.name]));
});

test('any line that keeps clear of the characters for stretches comes back', () => {
  const piece = fc.oneof(
    fc.constantFrom('"density":[', 'notes', '–', '¢', '𝛼', '-1', '1', ',', ' '),
    fc.string().map((s) => s.replace(/[\n\u0100-\u058f]/g, '')),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 200 }), (pieces) => {
      const text = pieces.join('');
      expect(unpack(pack(text))).toBe(text);
    }),
  );
  const often = 'the same words again, '.repeat(50);
  const packed = pack(often);
  expect(unpack(packed)).toBe(often);
  expect(packed.text.length + packed.stretches.length).toBeLessThan(often.length / 5);
});

test('a text that would come back as another is refused', () => {
  expect(() => pack('Ž')).toThrow();
  expect(() => pack('two\nlines')).toThrow();
});

test('a curve comes back, or is refused', () => {
  const curve = fc.array(fc.integer({ min: -1000, max: 1000 }), { maxLength: 40 });
  fc.assert(
    fc.property(curve, (values) => {
      expect(unpackCurve(packCurve(values))).toEqual(values);
    }),
  );
  for (const values of [[45, 135, 270], [46, 0], [-4095], [4185]])
    expect(unpackCurve(packCurve(values))).toEqual(values);
  expect(() => packCurve([4186])).toThrow();
  expect(() => packCurve([-4096])).toThrow();
});

test('our functions on lists answer as those of lodash-es', async () => {
  const numbers = fc.option(fc.array(fc.integer({ min: -5, max: 5 })), { nil: undefined });
  const more = (n: number) => (n > 0 ? [n, n + 1] : n);
  // biome-ignore lint/suspicious/noExplicitAny: the library comes without types
  type Given = any;
  const { map, filter, flatMap, flatten, forEach, isEmpty, min, reduce, uniqBy } = lists;
  const cases: readonly (readonly [string, Given, (f: Given, list: number[] | undefined) => unknown])[] = [
    ['map', map, (f, list) => f(list, (n: number, i: number) => n * i)],
    ['filter', filter, (f, list) => f(list, (n: number) => n > 0)],
    ['flatMap', flatMap, (f, list) => f(list, more)],
    ['flatten', flatten, (f, list) => f(list?.map(more))],
    ['forEach', forEach, (f, list) => pushed((push) => f(list, push))],
    ['isEmpty', isEmpty, (f, list) => f(list)],
    ['min', min, (f, list) => f(list)],
    ['reduce', reduce, (f, list) => f(list, (sum: number, n: number, i: number) => sum * 2 + n * i, 1)],
    ['uniqBy', uniqBy, (f, list) => f(list, (n: number) => n * n)],
  ];
  expect(cases.map(([name]) => name).sort()).toEqual(Object.keys(lists).sort());
  for (const [name, own, ask] of cases) {
    const { default: theirs } = await import(`lodash-es/${name}.js`);
    fc.assert(
      fc.property(numbers, (list) => {
        expect(ask(own, list), name).toEqual(ask(theirs, list));
      }),
    );
  }
});

/** What is handed over, in order. */
function pushed(run: (push: (n: number) => void) => void): number[] {
  const list: number[] = [];
  run((n) => {
    list.push(n);
  });
  return list;
}

test('the types of the protocol that are left are those of the library', async () => {
  const types = "export * from 'vscode-languageserver-types';";
  const [all, left] = [await bundled(types, leftOut), await bundled(types, leftOut, namedTypes)];
  expect(Object.keys(left).length).toBeLessThan(Object.keys(all).length / 3);
  for (const name of ['CompletionItemKind', 'DiagnosticSeverity', 'SymbolKind'])
    expect(left[name], name).toEqual(all[name]);
});
