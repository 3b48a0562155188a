/** The watch itself: a program that does what Paintplan never does must be seen doing it. */
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { astray, confined, usedIn } from './watched.ts';

const here = dirname(fileURLToPath(import.meta.url));

test('files, sockets, names, processes and workers are all seen, allowed or refused', () => {
  const ran = spawnSync(process.execPath, [...confined([here]), join(here, 'control.mjs')], {
    encoding: 'utf8',
    timeout: 60_000,
  });
  const { used } = usedIn(ran.stderr);
  const seen = astray(used, [here]).join('\n');
  for (const expected of [
    /^file readFileSync \/etc\/hostname/m,
    /^file readFile \/etc\/passwd/m,
    /^file writeFileSync .*written-by-control/m,
    /^file openSync for writing .*opened-by-control/m,
    /^network connect /m,
    /^network listen /m,
    /^network createSocket udp4/m,
    /^network lookup example\.invalid/m,
    /^network fetch http/m,
    /^network request http/m,
    /^process spawn /m,
    /^process Worker /m,
  ])
    expect(seen).toMatch(expected);
  expect(used.some((u) => u.name === 'writeFileSync')).toBe(true);
  expect(ran.status).toBe(0);
});

test('what lies inside is not reported', () => {
  const inside = { kind: 'file', name: 'openSync', what: [join(here, 'a.paintplan')] } as const;
  expect(astray([inside], [here])).toEqual([]);
  expect(astray([{ ...inside, what: [join(here, '..', 'a')] }], [here])).toHaveLength(1);
  expect(astray([{ ...inside, name: 'writeFileSync' }], [here])).toHaveLength(1);
});
