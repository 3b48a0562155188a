/** Plans inside Markdown notes: fenced blocks of the language, each as a text of its own in which nothing moved. */

export interface Fenced {
  /** offsets of the block's inside in the note */
  readonly start: number;
  readonly end: number;
  /** the note with everything but this block blanked out, line breaks kept: offsets and lines are those of the note */
  readonly text: string;
}

const OPEN = /^( {0,3})(`{3,}|~{3,})[ \t]*paintplan\b[^`\n\r]*$/;

const blank = (text: string): string => text.replace(/[^\r\n]/g, ' ');

/** Fences as CommonMark has them: closed by one at least as long, or by the end of the note. */
export function fencedPlans(note: string): Fenced[] {
  const blocks: { start: number; end: number }[] = [];
  let at = 0;
  let open: { fence: string; start: number; ours: boolean } | undefined;
  for (const m of note.matchAll(/[^\r\n]*(?:\r\n|\n|\r|$)/g)) {
    const line = m[0].replace(/[\r\n]+$/, '');
    const next = at + m[0].length;
    if (open) {
      const close = /^ {0,3}(`{3,}|~{3,})[ \t]*$/.exec(line)?.[1];
      if (close?.startsWith(open.fence)) {
        if (open.ours) blocks.push({ start: open.start, end: at });
        open = undefined;
      }
    } else {
      const ours = OPEN.exec(line);
      const any = ours?.[2] ?? /^ {0,3}(`{3,}|~{3,})/.exec(line)?.[1];
      if (any) open = { fence: any, start: next, ours: ours !== null };
    }
    at = next;
    if (m[0] === '') break;
  }
  if (open?.ours) blocks.push({ start: open.start, end: note.length });
  return blocks.map(({ start, end }) => ({
    start,
    end,
    text: blank(note.slice(0, start)) + note.slice(start, end) + blank(note.slice(end)),
  }));
}
