import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions, type Exports, run } from './shared.ts';

/** A worker may not be loaded from another origin, but may be made from a Blob that holds its text. */
async function workerFrom(address: string): Promise<Worker> {
  const text = await (await fetch(address)).text();
  return new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' })));
}

export async function activate(context: ExtensionContext): Promise<Exports> {
  const worker = await workerFrom(Uri.joinPath(context.extensionUri, 'out', 'server.js').toString(true));
  return run(context, new LanguageClient('paintplan', 'Paintplan', worker, clientOptions()));
}
