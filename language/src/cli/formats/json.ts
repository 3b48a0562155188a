import { sensible } from '../../study/sensible.ts';

// JSON.stringify writes these as they are; a terminal, or a service that reads what a pipeline prints, would obey them
const STEERING = /(?<=##)\[|[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/** A value as JSON, as every command prints it. */
export const jsonText = (value: unknown): string =>
  `${JSON.stringify(sensible(value), null, 2).replace(
    STEERING,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )}\n`;
