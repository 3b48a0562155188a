/** Names the world outside knows us by, stated once. */
export const LANGUAGE_ID = 'paintplan';
export const FILE_ENDING = '.paintplan';
export const TOOL_NAME = 'paintplan';
export const TOOL_VERSION = '0.1.0';
