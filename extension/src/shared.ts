/** What the desktop and the web client of the extension share. */
import { commands, type ExtensionContext, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { LANGUAGE } from './language.ts';
import { drawingPlans, type MarkdownIt } from './markdown.ts';
import { registerPreview } from './preview.ts';
import { registerReads } from './reads.ts';
import { registerStatus } from './status.ts';
import { registerTasks } from './tasks.ts';

export function clientOptions(): LanguageClientOptions {
  return {
    // notes too: the plans fenced in them are checked in place
    documentSelector: [{ language: LANGUAGE }, { language: 'markdown' }],
    synchronize: { fileEvents: workspace.createFileSystemWatcher('**/*.paintplan') },
    // asked at every start: a server started again after trust was granted must know of it
    initializationOptions: () => ({ trusted: workspace.isTrusted, readsFiles: true }),
  };
}

async function restart(client: BaseLanguageClient): Promise<void> {
  await client.stop();
  await client.start();
}

/** What the editor's Markdown preview asks of the extension. */
export interface Exports {
  readonly extendMarkdownIt: (md: MarkdownIt) => MarkdownIt;
}

/** Starts the client and ties it, its commands and the trust of the workspace to the extension's life. */
export async function run(context: ExtensionContext, client: BaseLanguageClient): Promise<Exports> {
  context.subscriptions.push(
    { dispose: () => void client.stop() },
    commands.registerCommand('paintplan.restartServer', () => restart(client)),
    workspace.onDidGrantWorkspaceTrust(() => client.sendNotification('paintplan/trusted')),
  );
  context.subscriptions.push(registerReads(client));
  await client.start();
  registerPreview(context, client);
  registerStatus(context, client);
  context.subscriptions.push(registerTasks());
  return {
    extendMarkdownIt: drawingPlans(
      (text) => client.sendRequest<string>('paintplan/drawing', { text }),
      () => void commands.executeCommand('markdown.preview.refresh'),
    ),
  };
}
