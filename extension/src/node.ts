import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions, run } from './shared.ts';

export function activate(context: ExtensionContext): Promise<void> {
  const module = Uri.joinPath(context.extensionUri, 'out', 'server.js').fsPath;
  return run(
    context,
    new LanguageClient('paintplan', 'Paintplan', { module, transport: TransportKind.ipc }, clientOptions()),
  );
}
