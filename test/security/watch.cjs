// Loaded before a program (--require): writes every use of the file system, the network, child processes and workers
// to standard error, a line each, and changes nothing else. What Node itself does below these functions is not seen.
const fs = require('node:fs');
const { syncBuiltinESMExports } = require('node:module');
const { resolve } = require('node:path');

const MARK = 'USED ';
const { writeSync } = fs;
function tell(kind, name, what) {
  const line = Buffer.from(`${MARK}${JSON.stringify({ kind, name, what })}\n`);
  for (let at = 0; at < line.length; ) {
    try {
      at += writeSync(2, line, at);
    } catch (error) {
      if (error.code !== 'EAGAIN') throw error;
    }
  }
}

const shown = (value) => {
  if (typeof value === 'string') return value;
  if (Buffer.isBuffer(value)) return value.toString();
  if (value instanceof URL) return value.href;
  return typeof value === 'number' ? `descriptor ${value}` : String(value);
};

/** Whether a file is opened to be written. */
function writes(name, flags) {
  if (!/^open(Sync)?$/.test(name)) return false;
  if (typeof flags === 'number') return (flags & (fs.constants.O_WRONLY | fs.constants.O_RDWR)) !== 0;
  return typeof flags === 'string' && flags !== 'r';
}

function watch(of, kind, names, what) {
  for (const name of names) {
    const before = of?.[name];
    if (typeof before !== 'function') continue;
    const watched = function (...given) {
      tell(kind, writes(name, given[1]) ? `${name} for writing` : name, what(given, this));
      return new.target ? Reflect.construct(before, given, new.target) : Reflect.apply(before, this, given);
    };
    Object.defineProperties(watched, Object.getOwnPropertyDescriptors(before));
    watched.prototype = before.prototype;
    of[name] = watched;
  }
}

// descriptors were opened by a call that was told; functions that take two paths are told with both
const PATHS = [
  'access',
  'appendFile',
  'chmod',
  'chown',
  'copyFile',
  'cp',
  'createReadStream',
  'createWriteStream',
  'exists',
  'glob',
  'lchmod',
  'lchown',
  'link',
  'lstat',
  'lutimes',
  'mkdir',
  'mkdtemp',
  'open',
  'openAsBlob',
  'opendir',
  'readFile',
  'readdir',
  'readlink',
  'realpath',
  'rename',
  'rm',
  'rmdir',
  'stat',
  'statfs',
  'symlink',
  'truncate',
  'unlink',
  'unwatchFile',
  'utimes',
  'watch',
  'watchFile',
  'writeFile',
];
const place = (value) =>
  typeof value === 'string' && !value.startsWith('file:') ? resolve(value) : shown(value);
const paths = ([first, second]) =>
  typeof second === 'string' && /^(\/|\.)/.test(second) ? [place(first), place(second)] : [place(first)];
watch(
  fs,
  'file',
  PATHS.flatMap((p) => [p, `${p}Sync`]),
  paths,
);
watch(fs.promises, 'file', PATHS, paths);
watch(fs.realpathSync, 'file', ['native'], paths);

const any = (given) => given.map((g) => (typeof g === 'function' ? 'function' : shown(g))).slice(0, 2);
const net = require('node:net');
watch(net.Socket.prototype, 'network', ['connect'], any);
watch(net.Server.prototype, 'network', ['listen'], any);
watch(require('node:dgram'), 'network', ['createSocket', 'Socket'], any);
watch(require('node:tls'), 'network', ['connect', 'createServer'], any);
for (const scheme of ['http', 'https'])
  watch(require(`node:${scheme}`), 'network', ['request', 'get', 'createServer'], any);
watch(require('node:http2'), 'network', ['connect', 'createServer', 'createSecureServer'], any);
const dns = require('node:dns');
const NAMES = Object.keys(dns).filter((n) => /^(lookup|resolve|reverse)/.test(n));
watch(dns, 'network', NAMES, any);
watch(dns.promises, 'network', NAMES, any);
watch(globalThis, 'network', ['fetch', 'WebSocket', 'EventSource'], any);
const RUNS = ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork'];
watch(require('node:child_process'), 'process', RUNS, any);
watch(require('node:worker_threads'), 'process', ['Worker'], any);
watch(require('node:cluster'), 'process', ['fork'], any);
syncBuiltinESMExports();
