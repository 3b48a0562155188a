/**
 * What libraries bring along and nothing of ours can reach is left out of the bundles. In its place stands the little that
 * is asked of it, or nothing; a library that asks for more one day does not bundle.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'esbuild';

const at = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** Modules of which nothing is asked. */
const EMPTY = [
  // measures of difference by name, and the spaces they need: css.ts maps into a gamut as CSS does, which names none
  /[\\/]colorjs\.io[\\/]src[\\/]deltaE[\\/]index\.js$/,
  // names of colours: css.ts takes none
  /[\\/]colorjs\.io[\\/]src[\\/]keywords\.js$/,
  // looks for modules of an editor’s workspace; we ask for none
  /[\\/]vscode-languageserver[\\/]lib[\\/]node[\\/]files\.js$/,
];

export const leftOut: Plugin = {
  name: 'left-out',
  setup({ onResolve, onLoad }) {
    // Langium’s own loader brings its whole set of services along
    onResolve({ filter: /\/grammar-loader\.js$/ }, () => ({ path: at('grammar-loader.ts') }));
    // the same version is installed twice, for Langium and for the protocol
    onResolve({ filter: /^vscode-languageserver-types$/ }, () => ({
      path: at(
        `../../node_modules/vscode-languageserver-protocol/node_modules/vscode-languageserver-types/lib/esm/main.js`,
      ),
    }));
    // the parser asks lodash for what Array does itself
    onResolve({ filter: /^lodash-es\/\w+\.js$/ }, ({ path }) => ({ path, namespace: 'lists' }));
    onLoad({ filter: /./, namespace: 'lists' }, ({ path }) => ({
      contents: `export { ${path.match(/(\w+)\.js$/)?.[1]} as default } from ${JSON.stringify(at('lists.ts'))}`,
      resolveDir: at('.'),
    }));
    for (const filter of EMPTY) onLoad({ filter }, () => ({ contents: 'export default {}' }));
  },
};

/**
 * Of the library of protocol types what somebody names: `Name.of` in our server and in Langium’s modules, `.Name` in the
 * compiled libraries of the protocol. The rest is checks of values that nobody makes.
 */
export const namedTypes: Plugin = {
  name: 'named-types',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]vscode-languageserver-types[\\/]lib[\\/]esm[\\/]main\.js$/ }, ({ path }) => {
      const modules = codeBelow('../src/server') + codeBelow('../../node_modules/langium/lib/documentation');
      const libraries = ['jsonrpc', 'languageserver-protocol', 'languageserver']
        .map((name) => codeBelow(`../../node_modules/vscode-${name}/lib`))
        .join('');
      const named = new Set(
        [...modules.matchAll(/\b(\w+)\./g), ...libraries.matchAll(/\.(\w+)/g)].map((m) => m[1]),
      );
      // as an expression a namespace that nobody asks for falls away
      const contents = readFileSync(path, 'utf8').replace(
        /^export var (\w+);\n(?:\/\*\*(?:[^*]|\*(?!\/))*\*\/\n)?(\(function \(\1\) \{.*?^)\}\)\(\1 \|\| \(\1 = \{\}\)\);/gms,
        (_, name: string, body: string) =>
          `${named.has(name) ? 'export ' : ''}const ${name} = /* @__PURE__ */ ${body} return ${name}; })({});`,
      );
      return { contents };
    });
  },
};

const codeBelow = (folder: string): string =>
  readdirSync(at(folder), { recursive: true, encoding: 'utf8' })
    .filter((f) => /(?<!\.d)\.[jt]s$/.test(f))
    .map((f) => readFileSync(join(at(folder), f), 'utf8'))
    .join('\n');
