/** Test data of this room, read relative to it. */
import { readFileSync } from 'node:fs';
import { readTable } from '../../language/build/optics/csv.ts';

export const text = (name: string): string => readFileSync(new URL(`data/${name}`, import.meta.url), 'utf8');
export const table = (name: string): Record<string, string>[] => readTable(text(name));
