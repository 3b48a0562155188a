/** Names the world outside knows us by, stated once. */
export const LANGUAGE_ID = 'paintplan';
/** The ending of plan files, with its dot. */
export const FILE_ENDING = '.paintplan';
/** The name of the command and of the package. */
export const TOOL_NAME = 'paintplan';
/** The version of the tool; its data have a number of their own. */
export const TOOL_VERSION = '0.1.0';
