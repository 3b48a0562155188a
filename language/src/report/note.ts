/**
 * A Markdown note with marked places filled from its plans: `<!-- paintplan section -->` … `<!-- paintplan end -->`.
 * A place takes the nearest plan fenced above it, or the file it names: `<!-- paintplan layers of "pears.paintplan" -->`.
 * Filling a filled note again changes nothing.
 */
import type { Report } from './document.ts';
import { markdownPart } from './markdown.ts';

const PLACE =
  /^<!-- paintplan ([a-z-]+)(?: of "([^"\n\r]+)")? -->[ \t]*(\r\n|\n|\r)([\s\S]*?)^<!-- paintplan end -->[ \t]*$/gm;

export interface Filled {
  readonly text: string;
  /** SVG files by name, to be written beside the note */
  readonly drawings: ReadonlyMap<string, string>;
  /** places that could not be filled, with their line (1-based) */
  readonly faults: readonly { readonly line: number; readonly message: string }[];
}

/** `planAbove` gives the report of the plan fenced nearest above an offset, `planOf` that of a file. */
export function fillNote(
  note: string,
  prefix: string,
  planAbove: (offset: number) => Report | undefined,
  planOf: (path: string) => Report | undefined,
): Filled {
  const drawings = new Map<string, string>();
  const faults: { line: number; message: string }[] = [];
  const known = new Map<Report, number>();
  const text = note.replace(
    PLACE,
    (whole, what: string, path: string | undefined, eol: string, _old: string, offset: number) => {
      const fault = (message: string) => {
        faults.push({ line: note.slice(0, offset).split(/\r\n|\n|\r/).length, message });
        return whole;
      };
      const report = path === undefined ? planAbove(offset) : planOf(path);
      if (!report)
        return fault(
          path === undefined
            ? 'There is no plan fenced above this place.'
            : `‘${path}’ cannot be read as a plan.`,
        );
      if (!known.has(report)) known.set(report, known.size + 1);
      const made = markdownPart(report, what, `${prefix}-${known.get(report)}`);
      if (!made)
        return fault(
          `The plan has no ‘${what}’. It has ${[...report.parts.map((p) => p.id), 'section', 'build-up'].join(', ')}.`,
        );
      for (const [name, drawing] of made.drawings) drawings.set(name, drawing);
      const head = `<!-- paintplan ${what}${path === undefined ? '' : ` of "${path}"`} -->`;
      return `${head}${eol}${eol}${made.text.replaceAll('\n', eol)}${eol}${eol}<!-- paintplan end -->`;
    },
  );
  return { text, drawings, faults };
}
