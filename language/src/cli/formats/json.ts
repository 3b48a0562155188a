import { sensible } from '../../study/sensible.ts';

/** A value as JSON, as every command prints it. */
export const jsonText = (value: unknown): string => `${JSON.stringify(sensible(value), null, 2)}\n`;
