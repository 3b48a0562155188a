/** What made a result: stated at the head of every JSON text. */
import { dataVersion } from '../materials/version.ts';
import { TOOL_NAME, TOOL_VERSION } from '../plan/names.ts';

/** Name and version of the tool, and the number of the data it carries. */
export interface Tool {
  readonly name: string;
  readonly version: string;
  readonly data: string;
}

/** This tool, as it names itself. */
export const tool: Tool = { name: TOOL_NAME, version: TOOL_VERSION, data: dataVersion };
