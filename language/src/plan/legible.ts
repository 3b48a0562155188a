/** A stranger's words on their way to a reader. */

// control characters but tab and line feed; marks that turn the direction of writing (UAX #9, section 2); what
// no text may hold (U+FFFE and U+FFFF, halves of a pair)
const STEERING =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/**
 * Words of a plan, or a file's name, as they may be shown anywhere: what would steer a terminal, turn the order of the
 * letters round or break a format is seen as a mark (U+FFFD).
 */
export const legible = (text: string): string => text.replace(STEERING, '\ufffd');
