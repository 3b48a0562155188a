/** The plans of this folder and what the rules say to them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Severity } from '../../language/src/plan/plan.ts';
import { readPlan } from '../../language/src/plan/read.ts';
import { findings } from '../../language/src/rules/check.ts';
import type { Finding } from '../../language/src/rules/rule.ts';
import { study } from '../../language/src/study/build.ts';

export interface Judged {
  readonly kind: 'sound' | 'faulty';
  readonly name: string;
  /** rules the first line says speak: the seeded one, then what follows from it */
  readonly seeded: readonly string[];
  readonly found: readonly Finding[];
  /** rules that speak as errors or warnings, each once, in order of their ids */
  readonly firm: readonly string[];
}

const SEEDED = /^\/\/ seeded: ([a-z0-9-]+)(?:, and its consequences: ([a-z0-9-]+(?:, [a-z0-9-]+)*))?$/;

function judge(kind: Judged['kind'], file: string, path: string): Judged {
  const text = readFileSync(path, 'utf8');
  const plan = readPlan(text, pathToFileURL(path).href);
  const found = findings(plan, study(plan), { strict: true });
  const [, rule, more] = SEEDED.exec(text.split('\n')[0] ?? '') ?? [];
  return {
    kind,
    name: file.replace('.paintplan', ''),
    seeded: [...(rule ? [rule] : []), ...(more?.split(', ') ?? [])],
    found,
    firm: [
      ...new Set(found.filter((f) => f.severity === 'error' || f.severity === 'warning').map((f) => f.rule)),
    ].sort(),
  };
}

export function plansOf(kind: Judged['kind']): Judged[] {
  const folder = join(import.meta.dirname, kind);
  return readdirSync(folder)
    .filter((f) => f.endsWith('.paintplan'))
    .sort()
    .map((f) => judge(kind, f, join(folder, f)));
}

export const count = ({ found }: Judged, severity: Severity): number =>
  found.filter((f) => f.severity === severity).length;
