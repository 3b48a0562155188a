/**
 * The npm package as a stranger meets it: packed, installed offline into an empty project, run, imported, type-checked.
 * Nothing here reads the tree but to pack it.
 */
import { execFile, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { build } from 'esbuild';
import { publint } from 'publint';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const run = promisify(execFile);
const root = new URL('../..', import.meta.url).pathname;
const project = mkdtempSync(join(tmpdir(), 'paintplan-npm-'));
const installed = join(project, 'node_modules', 'paintplan');
const SLOW = 300_000;

interface Packed {
  readonly filename: string;
  readonly size: number;
  readonly unpackedSize: number;
  readonly files: readonly { readonly path: string }[];
}
let packed: Packed;

/** One command in the stranger's project; never throws. */
async function shell(command: string, args: readonly string[]) {
  try {
    return { code: 0, ...(await run(command, args, { cwd: project, maxBuffer: 64 * 1024 * 1024 })) };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { code, stdout, stderr };
  }
}
const paintplan = (...args: string[]) => shell('npx', ['--no-install', 'paintplan', ...args]);
const node = (...args: string[]) => shell(process.execPath, args);

beforeAll(async () => {
  const { stdout } = await run(
    'npm',
    ['pack', '--json', '--workspace', 'paintplan', '--pack-destination', project],
    { cwd: root },
  );
  packed = JSON.parse(stdout.slice(stdout.search(/^\[/m)))[0];
  writeFileSync(join(project, 'package.json'), '{ "name": "stranger", "private": true, "type": "module" }');
  writeFileSync(
    join(project, 'pomegranate.paintplan'),
    'plan "A pomegranate"\nsupport linen 24 x 30 cm\npaint white = PW6 in linseed\nground priming { material acrylic }\nglaze yellow { colour PY150 + white   medium 50 % stand-oil }\n',
  );
  await run('npm', ['install', '--offline', '--no-audit', '--no-fund', `./${packed.filename}`], {
    cwd: project,
  });
}, SLOW);

afterAll(() => rmSync(project, { recursive: true, force: true }));

describe('what is packed', () => {
  test('everything the manifest promises, and nothing else', () => {
    const paths = packed.files.map((f) => f.path);
    console.log(
      `${packed.filename}: ${Math.round(packed.size / 1000)} KB packed, ${Math.round(packed.unpackedSize / 1000)} KB unpacked, ${paths.length} files`,
    );
    const allowed =
      /^(package\.json|README\.md|CHANGELOG\.md|LICENSE|THIRD-PARTY-NOTICES\.md|bin\/paintplan\.js|out\/(cli|index|node|server)\.js|out\/types\/[\w/-]+\.d\.ts|docs\/[\w-]+\.(md|schema\.json))$/;
    expect(paths.filter((p) => !allowed.test(p))).toEqual([]);
    const manifest = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
    const promised = [
      ...Object.values(manifest.exports).flatMap((e) =>
        typeof e === 'string' ? [e] : Object.values(e as object),
      ),
      `./${manifest.bin.paintplan}`,
      manifest.types,
      ...['./LICENSE', './THIRD-PARTY-NOTICES.md', './CHANGELOG.md', './README.md'],
    ];
    for (const path of promised) expect(paths).toContain(String(path).slice(2));
    // generous: three bundles that each carry the catalogue with its sources and spectra
    expect(packed.size).toBeLessThan(2_000_000);
  });

  test('it brings no other package with it', () => {
    expect(readdirSync(join(project, 'node_modules')).filter((f) => !f.startsWith('.'))).toEqual([
      'paintplan',
    ]);
    const manifest = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
    expect(manifest.dependencies).toBeUndefined();
    expect(Object.keys(manifest.scripts ?? {}).filter((s) => /install/.test(s))).toEqual([]);
  });

  test('publint has nothing to say', async () => {
    const { messages } = await publint({ pkgDir: installed, pack: false, strict: true });
    expect(messages.map((m) => m.code)).toEqual([]);
  });

  test('notices name the open data by licence, and the libraries', () => {
    const notices = readFileSync(join(installed, 'THIRD-PARTY-NOTICES.md'), 'utf8');
    for (const word of ['CC0', 'CC BY 4.0', 'langium', 'commander', 'MIT']) expect(notices).toContain(word);
  });
});

describe('the command line', () => {
  test(
    'says its version and that of its data',
    async () => {
      const { version } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
      expect((await paintplan('--version')).stdout).toMatch(
        new RegExp(`^${version.replaceAll('.', '\\.')} \\(data \\d{4}\\.\\d+(\\.\\d+)?\\)\\n$`),
      );
    },
    SLOW,
  );

  test(
    'checks, studies and explains',
    async () => {
      const [check, study, explain, wrong] = await Promise.all([
        paintplan('check', 'pomegranate.paintplan'),
        paintplan('study', 'pomegranate.paintplan', '--format', 'json'),
        paintplan('explain', 'PB29'),
        paintplan('check', 'nothing.paintplan'),
      ]);
      expect(check.stdout).toContain('opaque-white-in-glaze');
      const json = JSON.parse(study.stdout);
      const ajv = addFormats.default(new Ajv({ strict: false }));
      const valid = ajv.compile(JSON.parse(readFileSync(join(installed, 'docs/study.schema.json'), 'utf8')));
      expect(valid(json), JSON.stringify(valid.errors)).toBe(true);
      expect(json.tool).toMatchObject({ name: 'paintplan', data: expect.stringMatching(/^\d{4}\./) });
      expect(explain.stdout).toMatch(/PB29/);
      expect([wrong.code, wrong.stderr]).toEqual([2, expect.stringMatching(/There is no file/)]);
    },
    SLOW,
  );

  test(
    'serves an editor',
    async () => {
      const server = spawn(process.execPath, [join(installed, 'bin/paintplan.js'), 'lsp', '--stdio'], {
        cwd: project,
      });
      const body = JSON.stringify({
        jsonrpc: '2.0',
        id: 1,
        method: 'initialize',
        params: { processId: process.pid, rootUri: null, capabilities: {} },
      });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
      let answer = '';
      for await (const piece of server.stdout) {
        answer += piece;
        if (answer.includes('"capabilities"') && answer.trimEnd().endsWith('}')) break;
      }
      server.kill();
      expect(answer).toMatch(/"id":1.*"hoverProvider"/s);
    },
    SLOW,
  );

  test(
    'an old Node is told what is needed, without a stack',
    async () => {
      // the number alone is made old: every machine that runs the tests has a newer one
      const old = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '20.11.1' } })`;
      const { code, stderr } = await node(
        '--import',
        `data:text/javascript,${encodeURIComponent(old)}`,
        join(installed, 'bin/paintplan.js'),
        '--version',
      );
      expect([code, stderr]).toEqual([
        2,
        'paintplan needs Node 22 or later; this is Node 20.11.1. Install a newer Node, then try again.\n',
      ]);
    },
    SLOW,
  );
});

/** The compiler on files of the project, as strict as it goes: declarations are checked too. */
async function compiled(module: string, moduleResolution: string, files: readonly string[]) {
  const config = `tsconfig.${moduleResolution}.${files[0]}.json`;
  const compilerOptions = {
    ...{ module, moduleResolution, target: 'es2023', lib: ['es2023', 'dom'], types: [] },
    ...{ strict: true, skipLibCheck: false, exactOptionalPropertyTypes: true, noEmit: true },
  };
  writeFileSync(join(project, config), JSON.stringify({ compilerOptions, files }));
  return (await node(join(root, 'node_modules/typescript/bin/tsc'), '-p', config)).stdout;
}

/** The programs the readme shows, as files of the project. */
function readmePrograms(): string[] {
  const readme = readFileSync(join(installed, 'README.md'), 'utf8');
  return [...readme.matchAll(/^```ts\n([\s\S]*?)^```/gm)].map(([, code = ''], i) => {
    const name = `readme-${i + 1}.ts`;
    writeFileSync(join(project, name), code);
    return name;
  });
}

describe('the library', () => {
  test(
    'the programs of the readme have sound types, and run',
    async () => {
      const files = readmePrograms();
      expect(files.length).toBeGreaterThan(2);
      // a door that is run, not called: its types must be found nonetheless
      writeFileSync(join(project, 'server.ts'), "import 'paintplan/server';\n");
      const [nodenext, bundler, ...ran] = await Promise.all([
        compiled('nodenext', 'nodenext', [...files, 'server.ts']),
        compiled('esnext', 'bundler', [...files, 'server.ts']),
        ...files.map((file) => node(file)),
      ]);
      expect([nodenext, bundler]).toEqual(['', '']);
      expect(ran.map((r) => [r.code, r.stderr])).toEqual(files.map(() => [0, '']));
      const [first = '', second = '', third = ''] = ran.map((r) => r.stdout);
      expect(first).toMatch(/^2 layers\ntrue\n/);
      expect(first.trimEnd()).toMatch(/true$/);
      expect(second).toContain('pomegranate.paintplan warning opaque-white-in-glaze');
      expect(third).toMatch(/pigments\n[\s\S]*CC0[\s\S]*CC BY 4\.0/);
    },
    SLOW,
  );

  test(
    'a wrong use is a fault of types',
    async () => {
      writeFileSync(
        join(project, 'wrong.ts'),
        "import { createAnalyser } from 'paintplan';\nconst n: string = createAnalyser()('', 'a').plan.layers.length;\nconsole.log(n);\n",
      );
      expect(await compiled('nodenext', 'nodenext', ['wrong.ts'])).toMatch(/wrong\.ts\(2,7\): error TS2322/);
    },
    SLOW,
  );

  test('everything exported is explained', () => {
    const doors = ['out/types/index.d.ts', 'out/types/cli/library.d.ts'].map((d) => join(installed, d));
    const program = ts.createProgram(doors, { module: ts.ModuleKind.NodeNext, strict: true, types: [] });
    const checker = program.getTypeChecker();
    const silent = doors.flatMap((door) => {
      const file = program.getSourceFile(door);
      const module = file && checker.getSymbolAtLocation(file);
      expect(module, door).toBeDefined();
      return checker.getExportsOfModule(module as ts.Symbol).flatMap((symbol) => {
        const real = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
        return real.getDocumentationComment(checker).length > 0 ? [] : [symbol.name];
      });
    });
    expect(silent).toEqual([]);
  });

  test(
    'CommonJS can require it, and finds its schemas',
    async () => {
      writeFileSync(
        join(project, 'old.cjs'),
        "const { tool, createAnalyser } = require('paintplan');\nconst schema = require('paintplan/check.schema.json');\nconsole.log(tool.name, schema.title, createAnalyser()('plan \"A\"', 'file:///a.paintplan').plan.title, require('paintplan/package.json').version);\n",
      );
      const { stdout, stderr } = await node('old.cjs');
      expect(stdout, stderr).toMatch(/^paintplan paintplan check --format json A \d+\.\d+\.\d+\n$/);
      const closed = await node('-e', "import('paintplan/out/cli.js').catch((e) => console.log(e.code))");
      expect(closed.stdout).toBe('ERR_PACKAGE_PATH_NOT_EXPORTED\n');
    },
    SLOW,
  );

  test(
    'it goes into a page: bundled for a browser, it needs nothing of Node',
    async () => {
      mkdirSync(join(project, 'page'));
      writeFileSync(
        join(project, 'page/main.js'),
        "import { createAnalyser } from 'paintplan';\nglobalThis.said = createAnalyser()('plan \"Blue\"\\nglaze blue { colour PB29 }', 'file:///b.paintplan').findings().map((f) => f.rule);\n",
      );
      const { outputFiles } = await build({
        entryPoints: [join(project, 'page/main.js')],
        bundle: true,
        platform: 'browser',
        format: 'iife',
        write: false,
        logLevel: 'silent',
      });
      const page = outputFiles[0]?.text ?? '';
      // a realm with the language alone and what every browser adds: no process, no require, no Buffer
      const { createContext, runInContext } = await import('node:vm');
      const realm = createContext({
        URL,
        TextEncoder,
        TextDecoder,
        console,
        setTimeout,
        clearTimeout,
        performance,
      });
      runInContext(page, realm);
      expect(runInContext('said', realm)).toContain('oily-rags');
    },
    SLOW,
  );
});
