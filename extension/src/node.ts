import { createRequire } from 'node:module';
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { drawingPlans, type MarkdownIt } from './markdown.ts';
import { clientOptions, run } from './shared.ts';

export interface Exports {
  readonly extendMarkdownIt: (md: MarkdownIt) => MarkdownIt;
}

export async function activate(context: ExtensionContext): Promise<Exports> {
  const module = Uri.joinPath(context.extensionUri, 'out', 'server.js').fsPath;
  await run(
    context,
    new LanguageClient('paintplan', 'Paintplan', { module, transport: TransportKind.ipc }, clientOptions()),
  );
  let draw: ((text: string) => string) | undefined;
  return {
    // loaded when the first note is previewed, not before
    extendMarkdownIt: drawingPlans((text) => {
      draw ??= (createRequire(module)(module) as { drawings(text: string): string }).drawings;
      return draw(text);
    }),
  };
}
