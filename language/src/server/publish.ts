/**
 * Diagnostics: the cheap rules a moment after the last keystroke, those that need colours when nothing else is asked.
 * Clients that pull get the same findings and are told to ask again when the colours are ready.
 */
import type { Connection, Diagnostic } from 'vscode-languageserver';
import type { CheckSettings } from '../rules/check.ts';
import type { Finding } from '../rules/rule.ts';
import { MOST_TRIED, type Patience } from '../rules/trial.ts';
import { diagnosticOf } from './convert.ts';
import type { Documents, Open } from './documents.ts';

/** Long enough to skip the middle of a burst of keystrokes, short enough not to be felt. */
const PAUSE_MS = 12;
const COLOUR_PAUSE_MS = 250;

export interface Publisher {
  changed(uri: string): void;
  closed(uri: string): void;
  /** findings as last computed for this version, with or without the colour rules */
  findings(open: Open): readonly Finding[];
  /** all findings, those that need colours too */
  coloured(open: Open): readonly Finding[];
  diagnostics(open: Open): Diagnostic[];
  /** begins a request that may try fixes, which is not to take for ever */
  tryFixes(): void;
  /** settles when the colours of a document may be asked for: at once, or when its keyboard has rested */
  rested(uri: string): Promise<void>;
}

export function publisher(
  connection: Connection,
  documents: Documents,
  settings: () => CheckSettings,
  pulls: () => boolean,
): Publisher {
  const timers = new Map<string, NodeJS.Timeout>();
  const waiting = new Map<string, (() => void)[]>();
  const settle = (uri: string) => {
    for (const resolve of waiting.get(uri) ?? []) resolve();
    waiting.delete(uri);
  };
  const computed = new WeakMap<Open, { readonly findings: readonly Finding[]; readonly coloured: boolean }>();

  const patience: Patience = { left: MOST_TRIED, untried: 0 };
  const compute = (open: Open, coloured: boolean): readonly Finding[] => {
    const known = computed.get(open);
    if (known && (known.coloured || !coloured)) return known.findings;
    const findings = open.analysis.findings({ ...settings(), colour: coloured, patience });
    computed.set(open, { findings, coloured });
    return findings;
  };
  const diagnostics = (open: Open) => compute(open, false).map((f) => diagnosticOf(f, open.linesOf));
  const send = (uri: string, version: number | undefined, opens: readonly Open[]) =>
    pulls()
      ? undefined
      : connection.sendDiagnostics({ uri, version, diagnostics: opens.flatMap(diagnostics) });

  const later = (uri: string, pause: number, work: (opens: readonly Open[]) => void) => {
    clearTimeout(timers.get(uri));
    timers.set(
      uri,
      setTimeout(() => {
        timers.delete(uri);
        try {
          work(documents.all(uri));
        } catch (error) {
          connection.console.error(`Checking ${uri} failed: ${error instanceof Error ? error.stack : error}`);
          settle(uri);
        }
      }, pause),
    );
  };

  const colour = (uri: string) =>
    later(uri, COLOUR_PAUSE_MS, (opens) => {
      const count = () => opens.reduce((sum, open) => sum + (computed.get(open)?.findings.length ?? 0), 0);
      const before = count();
      for (const open of opens) compute(open, true);
      const version = opens[0]?.version;
      if (pulls()) {
        if (count() !== before) connection.languages.diagnostics.refresh().catch(() => {});
      } else send(uri, version, opens);
      connection.sendNotification('paintplan/coloured', { uri, version });
      settle(uri);
    });

  return {
    changed(uri) {
      later(uri, PAUSE_MS, (opens) => {
        send(uri, opens[0]?.version, opens);
        if (opens.length > 0) colour(uri);
        else settle(uri);
      });
    },
    closed(uri) {
      clearTimeout(timers.get(uri));
      timers.delete(uri);
      settle(uri);
      if (!pulls()) connection.sendDiagnostics({ uri, diagnostics: [] });
    },
    rested: (uri) =>
      timers.has(uri)
        ? new Promise((resolve) => waiting.set(uri, [...(waiting.get(uri) ?? []), resolve]))
        : Promise.resolve(),
    findings: (open) => compute(open, false),
    coloured: (open) => compute(open, true),
    diagnostics,
    tryFixes() {
      patience.left = MOST_TRIED;
    },
  };
}
