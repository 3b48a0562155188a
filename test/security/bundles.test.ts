/**
 * What the built bundles could do: every module of Node's that they name, and every function that reaches a network, with
 * the reason. A new one makes this test fail until somebody has asked why.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;

const OWN = 'our own reading and writing of files, as security.md tells';
const SERVER = 'the language server library';
const CLIENT = 'the language client library, which starts the server as a child process';

const SERVED = {
  fs: OWN,
  path: OWN,
  url: OWN,
  util: SERVER,
  os: `${SERVER}: where temporary files lie, for pipes it is not asked for`,
  crypto: `${SERVER}: names of pipes it is not asked for`,
  net: `${SERVER}: for --socket and --pipe, which an editor must ask for`,
};

/** Modules by bundle, each with who names it and what for. */
const NAMED: Record<string, Record<string, string>> = {
  'language/out/cli.js': {
    fs: OWN,
    path: OWN,
    url: OWN,
    module: 'bundles of CommonJS ask for require',
    child_process: 'the argument parser, for commands that are programs of their own; we have none',
    events: 'the argument parser',
    process: 'the argument parser',
  },
  'language/out/index.js': {},
  'language/out/node.js': { fs: OWN, path: OWN, url: OWN, module: 'bundles of CommonJS ask for require' },
  'language/out/server.js': { ...SERVED, module: 'bundles of CommonJS ask for require' },
  'extension/out/server.js': SERVED,
  'extension/out/node.js': {
    child_process: CLIENT,
    fs: CLIENT,
    path: CLIENT,
    os: CLIENT,
    crypto: CLIENT,
    net: `${CLIENT}; over the editor’s own channel here, not a socket`,
    readline: CLIENT,
    util: CLIENT,
  },
  'extension/out/browser.js': {},
};

/** Functions of the network by bundle. */
const REACHES: Record<string, Record<string, string>> = {
  'extension/out/browser.js': { fetch: 'loads the worker from the extension’s own folder' },
};

const bundles = ['language/out', 'extension/out'].flatMap((folder) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.js'))
    .map((f) => `${folder}/${f}`),
);

const BUILTIN = builtinModules.filter((m) => !m.startsWith('_')).join('|');
/** Imported, or handed as the only argument to a function, which is what a minified require looks like. */
const MODULE = new RegExp(
  `(?:\\bfrom ?|\\bimport ?|[\\w$]\\((?=["'][\\w:/]+["']\\)))["'](?:node:)?(${BUILTIN})["']`,
  'g',
);
const REACH = /(?<![\w$.]|function )(fetch|XMLHttpRequest|WebSocket|EventSource|sendBeacon|importScripts)\(/g;

const found = (text: string, pattern: RegExp): string[] => [
  ...new Set([...text.matchAll(pattern)].map((m) => m[1] as string)),
];

test('the bundles are those that are known', () => expect(bundles.sort()).toEqual(Object.keys(NAMED).sort()));

describe.each(bundles.map((b) => [b]))('%s', (bundle) => {
  const text = readFileSync(join(root, bundle), 'utf8');

  test('names these modules of Node and no others', () => {
    expect(found(text, MODULE).sort()).toEqual(Object.keys(NAMED[bundle] ?? {}).sort());
  });

  test('reaches for no network, and never speaks HTTP', () => {
    expect(found(text, REACH).sort()).toEqual(Object.keys(REACHES[bundle] ?? {}).sort());
    expect(text).not.toMatch(/["'](?:node:)?(?:https?|http2|tls|dgram|dns)["']\)/);
    expect(text).not.toMatch(/\beval\(|navigator\.sendBeacon|telemetry(?:Key|Reporter)/);
  });
});

test('the search sees what it looks for', () => {
  expect(found('Rr("node:http2");import t from"tls";require(\'net\');from "dns"', MODULE)).toEqual([
    'http2',
    'tls',
    'net',
    'dns',
  ]);
  expect(found('a(fetch("x"));new WebSocket("y")', REACH)).toEqual(['fetch', 'WebSocket']);
});
