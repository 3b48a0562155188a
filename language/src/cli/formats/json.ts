import { dataVersion } from '../../materials/catalogue.ts';
import { TOOL_NAME, TOOL_VERSION } from '../../plan/names.ts';
import { sensible } from '../../study/sensible.ts';
import type { CheckedFile } from './checked.ts';

export const tool = { name: TOOL_NAME, version: TOOL_VERSION, data: dataVersion };

/** The public JSON form of `check`; see language/docs/check.schema.json. */
export const checkJson = (files: readonly CheckedFile[]) => ({ version: '1', tool, files });

export const jsonText = (value: unknown): string => `${JSON.stringify(sensible(value), null, 2)}\n`;
