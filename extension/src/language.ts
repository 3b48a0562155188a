/** The id of the language in the editor. */
export const LANGUAGE = 'paintplan';
