import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions, type Exports, run } from './shared.ts';

export function activate(context: ExtensionContext): Promise<Exports> {
  const module = Uri.joinPath(context.extensionUri, 'out', 'server.js').fsPath;
  const server = { module, transport: TransportKind.ipc };
  return run(context, new LanguageClient('paintplan', 'Paintplan', server, clientOptions()));
}
