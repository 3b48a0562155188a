/** The user's settings, read defensively: a settings file may hold anything. */
import type { HintKind } from '../features/hints.ts';
import type { Severity } from '../plan/plan.ts';

export interface Settings {
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
  readonly hints: Readonly<Record<HintKind, boolean>>;
  readonly lenses: boolean;
  readonly predictedColours: boolean;
}

const SEVERITIES: readonly unknown[] = ['off', 'hint', 'info', 'warning', 'error'];

const part = (value: unknown, name: string): unknown =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;

const flag = (value: unknown, otherwise: boolean): boolean =>
  typeof value === 'boolean' ? value : otherwise;

export function readSettings(given: unknown): Settings {
  const rules = part(given, 'rules');
  const hints = part(given, 'hints');
  return {
    severities: Object.fromEntries(
      Object.entries(typeof rules === 'object' && rules !== null ? rules : {}).filter(([, v]) =>
        SEVERITIES.includes(v),
      ),
    ) as Settings['severities'],
    hints: {
      defaults: flag(part(hints, 'defaults'), true),
      fatness: flag(part(hints, 'fatness'), true),
      volume: flag(part(hints, 'volume'), false),
      target: flag(part(hints, 'target'), true),
    },
    lenses: flag(part(given, 'lenses'), true),
    predictedColours: flag(part(given, 'predictedColours'), true),
  };
}
