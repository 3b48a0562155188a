/** What stands in a bundle for a table and for the grammar: the same data, packed. Each is packed once for all bundles. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'esbuild';
import { pack, packCurve } from './pack.ts';

const unpackPath = JSON.stringify(fileURLToPath(new URL('unpack.ts', import.meta.url)));

/** An expression for the text of a JSON value; the characters that packing keeps for itself are escaped as JSON does. */
const packedJson = (value: unknown): string => {
  const text = JSON.stringify(value).replace(
    /[\u0100-\u058f]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return `unpack(${JSON.stringify(pack(text))})`;
};

/** A module with a table as its default export. */
export const packedTable = (json: string): string =>
  `import { unpack } from ${unpackPath};
export default JSON.parse(${packedJson(JSON.parse(json))});`;

interface Optical {
  readonly pigments: readonly { readonly a: readonly number[]; readonly s: readonly number[] }[];
}

/** A module with the optical table as its default export. The curves of a pigment are read when they are asked for. */
export function packedSpectra(json: string): string {
  const { pigments, ...rest }: Optical = JSON.parse(json);
  const curves = pigments.flatMap(({ a, s }) => [packCurve(a), packCurve(s)]).join(' ');
  const rows = pigments.map(({ a, s, ...row }) => row);
  return `import { unpack, unpackCurve } from ${unpackPath};
const curves = ${JSON.stringify(curves)}.split(' ');
const { rows, ...rest } = JSON.parse(${packedJson({ ...rest, rows })});
const pigments = rows.map((row, i) => ({
  ...row,
  get a() { return unpackCurve(curves[2 * i]) },
  get s() { return unpackCurve(curves[2 * i + 1]) },
}));
export default { ...rest, pigments };`;
}

/** The generated module of the grammar, with the JSON in it packed. */
export const packedGrammar = (code: string): string =>
  `import { unpack } from ${unpackPath};
${code.replace(/(?<=loadGrammarFromJson\()'(.*)'(?=\))/, (_, json: string) =>
  packedJson(JSON.parse(json.replace(/\\(.)/g, '$1'))),
)}`;

const made = new Map<string, string>();
const once = (path: string, make: (text: string) => string): string => {
  const contents = made.get(path) ?? make(readFileSync(path, 'utf8'));
  made.set(path, contents);
  return contents;
};

export const packedData: Plugin = {
  name: 'packed-data',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]tables[\\/][^\\/]+\.json$/ }, ({ path }) => ({
      loader: 'js',
      contents: once(path, /[\\/]optics[\\/]/.test(path) ? packedSpectra : packedTable),
    }));
    onLoad({ filter: /[\\/]generated[\\/]grammar\.ts$/ }, ({ path }) => ({
      loader: 'ts',
      contents: once(path, packedGrammar),
    }));
  },
};
