/** What `compare --format json` prints. */
import { sensible } from '../study/sensible.ts';
import { type Tool, tool } from '../study/tool.ts';
import { type Comparison, isSame } from './compare.ts';

/** What changed in meaning between two files; `old` and `new` are how the files are named. */
export interface CompareJson extends Comparison {
  readonly version: '1';
  readonly tool: Tool;
  readonly old: string;
  readonly new: string;
  readonly same: boolean;
}

/** A comparison as JSON, with the names of the two files. */
export const compareJson = (before: string, after: string, found: Comparison): CompareJson =>
  sensible({ version: '1', tool, old: before, new: after, same: isSame(found), ...found });
