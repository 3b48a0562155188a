/** Plans fenced in Markdown are drawn below their text in the editor's own Markdown preview. */

interface Token {
  readonly info: string;
  readonly content: string;
}

type Fence = (tokens: Token[], index: number, ...rest: unknown[]) => string;

export interface MarkdownIt {
  readonly renderer: { readonly rules: { fence?: Fence } };
}

const MOST_REMEMBERED = 40;

/** `draw` gives markup for a plan's text; what it gave is remembered, since a preview is drawn at every keystroke. */
export function drawingPlans(draw: (text: string) => string): (md: MarkdownIt) => MarkdownIt {
  const known = new Map<string, string>();
  const drawn = (text: string): string => {
    const before = known.get(text);
    if (before !== undefined) return before;
    if (known.size >= MOST_REMEMBERED) known.delete(known.keys().next().value as string);
    const made = draw(text);
    known.set(text, made);
    return made;
  };
  return (md) => {
    const before = md.renderer.rules.fence;
    md.renderer.rules.fence = (tokens, index, ...rest) => {
      const token = tokens[index];
      const text = before?.(tokens, index, ...rest) ?? '';
      if (!token || !/^paintplan\b/.test(token.info.trim())) return text;
      const picture = drawn(token.content);
      // the drawings are made for paper: dark ink on white, in every theme
      return picture
        ? `${text}<div style="background: #ffffff; padding: 8px; overflow-x: auto">${picture}</div>`
        : text;
    };
    return md;
  };
}
