/**
 * Diagnostics of plans that are not open, remembered by all they rest on: what was read from the disk and how severe each
 * rule is. Whoever has the last ones is told that they stand.
 */
import {
  type Diagnostic,
  DocumentDiagnosticReportKind,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { createAnalyser } from '../analyse.ts';
import type { PlanHost } from '../plan/host.ts';
import { linesOf } from '../plan/lines.ts';
import type { CheckSettings } from '../rules/check.ts';
import { diagnosticOf, unread } from './convert.ts';

type Read = ReturnType<PlanHost['read']>;

interface Resolved {
  readonly path: string;
  readonly by: string;
  readonly target: string;
}

interface Known {
  readonly id: string;
  readonly items: readonly Diagnostic[];
  readonly reads: ReadonlyMap<string, Read>;
  readonly resolved: readonly Resolved[];
  readonly host: PlanHost;
  readonly severities: string;
}

export interface ClosedPlans {
  /** Undefined for a file that is not there or not for us. */
  report(uri: string, previous: string | undefined): WorkspaceDocumentDiagnosticReport | undefined;
  /** forgets all but these */
  keep(uris: ReadonlySet<string>): void;
}

const same = (a: Read, b: Read): boolean =>
  'text' in a
    ? 'text' in b && a.text === b.text
    : 'failed' in b && a.failed === b.failed && a.detail === b.detail;

export function closedPlans(
  host: () => PlanHost,
  severities: () => CheckSettings['severities'],
): ClosedPlans {
  const known = new Map<string, Known>();
  // ids of an earlier server must not pass for ours
  const own = Date.now().toString(36);
  let next = 0;

  const stands = (k: Known): boolean =>
    k.host === host() &&
    k.severities === JSON.stringify(severities()) &&
    k.resolved.every(({ path, by, target }) => JSON.stringify(host().resolve(path, by)) === target) &&
    [...k.reads].every(([uri, read]) => same(read, host().read(uri)));

  function check(uri: string): Known | undefined {
    const from = host();
    const reads = new Map<string, Read>();
    const resolved: Resolved[] = [];
    const recording: PlanHost = {
      resolve(path, by) {
        const target = from.resolve(path, by);
        resolved.push({ path, by, target: JSON.stringify(target) });
        return target;
      },
      read(other) {
        const read = reads.get(other) ?? from.read(other);
        reads.set(other, read);
        return read;
      },
    };
    const read = recording.read(uri);
    const made = (items: readonly Diagnostic[]): Known => ({
      id: `${own}-${next++}`,
      items,
      reads,
      resolved,
      host: from,
      severities: JSON.stringify(severities()),
    });
    if ('failed' in read)
      return read.failed === 'unreadable' && read.detail ? made([unread(read.detail)]) : undefined;
    const lines = new Map([[uri, linesOf(read.text)]]);
    const linesIn = (other: string) => {
      const text = recording.read(other);
      const there = lines.get(other) ?? linesOf('text' in text ? text.text : '');
      lines.set(other, there);
      return there;
    };
    const findings = createAnalyser()(read.text, uri, recording).findings({
      severities: severities(),
      colour: false,
    });
    return made(findings.map((f) => diagnosticOf(f, linesIn)));
  }

  return {
    report(uri, previous) {
      const before = known.get(uri);
      const now = before && stands(before) ? before : check(uri);
      if (!now) {
        known.delete(uri);
        return undefined;
      }
      known.set(uri, now);
      const { id: resultId, items } = now;
      return previous === resultId
        ? { uri, version: null, kind: DocumentDiagnosticReportKind.Unchanged, resultId }
        : { uri, version: null, kind: DocumentDiagnosticReportKind.Full, resultId, items: [...items] };
    },
    keep(uris) {
      for (const uri of known.keys()) if (!uris.has(uri)) known.delete(uri);
    },
  };
}
