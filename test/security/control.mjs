// What must be seen: each of these is something Paintplan never does. Run under watch.cjs by watched.test.ts.
import { spawn } from 'node:child_process';
import { createSocket } from 'node:dgram';
import { lookup } from 'node:dns/promises';
import { openSync, readFileSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { request } from 'node:http';
import { connect, createServer } from 'node:net';
import { Worker } from 'node:worker_threads';

const attempts = {
  reading: () => readFileSync('/etc/hostname'),
  'reading later': () => readFile('/etc/passwd'),
  writing: () => writeFileSync(new URL('written-by-control.txt', import.meta.url), ''),
  'opening to write': () => openSync(new URL('opened-by-control.txt', import.meta.url), 'w'),
  connecting: () => connect(9, '127.0.0.1').on('error', () => {}),
  listening: () =>
    createServer()
      .on('error', () => {})
      .listen(0, '127.0.0.1'),
  datagrams: () =>
    createSocket('udp4')
      .on('error', () => {})
      .close(),
  names: () => lookup('example.invalid'),
  fetching: () => fetch('http://127.0.0.1:9/'),
  requesting: () =>
    request('http://127.0.0.1:9/')
      .on('error', () => {})
      .end(),
  starting: () => spawn(process.execPath, ['--version']).on('error', () => {}),
  working: () => new Worker('0', { eval: true }).on('error', () => {}),
};
for (const attempt of Object.values(attempts)) {
  try {
    await attempt();
  } catch {
    // refused; that it was tried is what counts
  }
}
process.exit(0);
