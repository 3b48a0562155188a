/** Reads a comma-separated table with a header row into records. */
import { parse } from 'csv-parse/sync';

export const readTable = (text: string): Record<string, string>[] =>
  parse(text, { columns: true, skip_empty_lines: true, trim: true, bom: true, comment: '#' });
