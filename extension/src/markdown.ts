/** Plans fenced in Markdown are drawn below their text in the editor's own Markdown preview. */

interface Token {
  readonly info: string;
  readonly content: string;
}

type Fence = (tokens: Token[], index: number, options?: unknown, env?: unknown, ...rest: unknown[]) => string;

export interface MarkdownIt {
  readonly renderer: { readonly rules: { fence?: Fence } };
}

const MOST_REMEMBERED = 40;

const isPlan = (token: Token | undefined) => /^paintplan\b/.test(token?.info?.trim() ?? '');

/** A Map that forgets the oldest. */
function remember<V>(map: Map<string, V>, key: string, value: V): void {
  map.delete(key);
  if (map.size >= MOST_REMEMBERED) map.delete(map.keys().next().value as string);
  map.set(key, value);
}

/**
 * `draw` asks for the markup of a plan's text; markdown-it cannot wait for it, so the page is made again (`again`) once
 * all that was asked for is there. Until then the place keeps the drawing it had, or a page would flicker at every key.
 */
export function drawingPlans(
  draw: (text: string) => Promise<string>,
  again: () => void,
): (md: MarkdownIt) => MarkdownIt {
  const known = new Map<string, string>();
  const lastAt = new Map<string, string>();
  const asked = new Set<string>();

  const ask = async (text: string) => {
    if (asked.has(text)) return;
    asked.add(text);
    remember(known, text, await draw(text).catch(() => ''));
    asked.delete(text);
    if (asked.size === 0) again();
  };
  const drawn = (text: string, place: string): string => {
    const picture = known.get(text);
    if (picture === undefined) {
      void ask(text);
      return lastAt.get(place) ?? '';
    }
    remember(lastAt, place, picture);
    return picture;
  };

  return (md) => {
    const before = md.renderer.rules.fence;
    md.renderer.rules.fence = (tokens, index, options, env, ...rest) => {
      const token = tokens[index];
      const text = before?.(tokens, index, options, env, ...rest) ?? '';
      if (!token || !isPlan(token)) return text;
      const page = (env as { currentDocument?: unknown } | undefined)?.currentDocument;
      const picture = drawn(token.content, `${page} ${tokens.slice(0, index).filter(isPlan).length}`);
      // the drawings are made for paper: dark ink on white, in every theme
      return picture
        ? `${text}<div style="background: #ffffff; padding: 8px; overflow-x: auto">${picture}</div>`
        : text;
    };
    return md;
  };
}
