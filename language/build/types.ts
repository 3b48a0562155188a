/**
 * Writes the type declarations of the published doors into language/out/types: those that the doors lead to and no
 * others, so that nothing a user need not have installed is asked for. Run before packing.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
const source = join(root, 'language', 'src');
const target = join(root, 'language', 'out', 'types');

/** Files of language/src that a user may import. */
const DOORS = ['index.ts', 'cli/library.ts', 'server/node.ts'];

const { config } = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile);
const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root);

/** Declarations by the path of their source. Types are checked elsewhere, so not again here. */
function declarations(): Map<string, string> {
  const made = new Map<string, string>();
  const program = ts.createProgram(
    DOORS.map((door) => join(source, door)),
    {
      ...options,
      noEmit: false,
      declaration: true,
      emitDeclarationOnly: true,
      noCheck: true,
      outDir: target,
    },
  );
  const { diagnostics } = program.emit(undefined, (_, text, __, ___, from) => {
    if (from?.[0]) made.set(from[0].fileName, text);
  });
  if (diagnostics.length > 0)
    throw new Error(ts.formatDiagnostics(diagnostics, ts.createCompilerHost(options)));
  return made;
}

const FROM = /(\bfrom |\bimport\()'(\.[^']+)\.ts'/g;

const made = declarations();
rmSync(target, { recursive: true, force: true });
const waiting = DOORS.map((door) => join(source, door));
const written = new Set<string>();
for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
  if (written.has(path)) continue;
  written.add(path);
  const text = made.get(path);
  const out = relative(source, path);
  if (text === undefined || out.startsWith('..')) throw new Error(`The published types reach ${path}.`);
  for (const [, , to] of text.matchAll(FROM)) waiting.push(resolve(dirname(path), `${to}.ts`));
  const file = join(target, out.replace(/\.ts$/, '.d.ts'));
  mkdirSync(dirname(file), { recursive: true });
  // the compiler leaves the endings as the sources have them; what is shipped is named as every resolver expects
  writeFileSync(file, text.replace(FROM, "$1'$2.js'"));
}
console.error(`${written.size} declarations in language/out/types`);
