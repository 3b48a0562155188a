/** Plans fenced in a note are drawn in the editor's Markdown preview, though drawing takes longer than rendering may. */
import { expect, test, vi } from 'vitest';
import { drawingPlans, type MarkdownIt } from '../../extension/src/markdown.ts';

const fence = (content: string, info = 'paintplan') => ({ info, content });

function preview(draw: (text: string) => Promise<string>) {
  const again = vi.fn();
  const md: MarkdownIt = {
    renderer: { rules: { fence: (tokens, i) => `<pre>${tokens[i]?.content}</pre>` } },
  };
  drawingPlans(draw, again)(md);
  const page = (...tokens: ReturnType<typeof fence>[]) =>
    tokens
      .map((_, i) => md.renderer.rules.fence?.(tokens, i, {}, { currentDocument: 'file:///a.md' }))
      .join('');
  return { page, again };
}
const settled = () => new Promise((done) => setTimeout(done, 5));

test('a plan is drawn once its drawing is there, and asked for once', async () => {
  const draw = vi.fn(async (text: string) => `<svg>${text}</svg>`);
  const { page, again } = preview(draw);
  expect(page(fence('one'), fence('two'))).toBe('<pre>one</pre><pre>two</pre>');
  await settled();
  expect(again).toHaveBeenCalledTimes(1);
  expect(page(fence('one'), fence('two'))).toMatch(/one<\/pre><div[^>]*><svg>one<\/svg><\/div>.*<svg>two/);
  await settled();
  expect(draw).toHaveBeenCalledTimes(2);
  expect(again).toHaveBeenCalledTimes(1);
});

test('while a changed plan is drawn, its place keeps the drawing it had', async () => {
  const { page } = preview(async (text) => `<svg>${text}</svg>`);
  page(fence('one'), fence('two'));
  await settled();
  page(fence('one'), fence('two'));
  expect(page(fence('one'), fence('two b'))).toMatch(/<svg>one<.*two b<.*<svg>two</);
  await settled();
  expect(page(fence('one'), fence('two b'))).toContain('<svg>two b</svg>');
});

test('other languages, plans without layers and a server that fails leave the text as it is', async () => {
  const { page, again } = preview(async (text) => {
    if (text === 'fails') throw new Error('no server');
    return '';
  });
  const tokens = [fence('x', 'ts'), fence('y', 'paintplans'), fence('empty'), fence('fails', ' paintplan ')];
  page(...tokens);
  await settled();
  expect(page(...tokens)).toBe('<pre>x</pre><pre>y</pre><pre>empty</pre><pre>fails</pre>');
  expect(again).toHaveBeenCalledTimes(1);
});
