/** The language server in a worker of the browser. It reads no disk: `use` reaches open files and those the editor hands over. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { virtualHost } from './diskless.ts';
import { serve } from './server.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
serve(createConnection(new BrowserMessageReader(scope), new BrowserMessageWriter(scope)), {
  host: virtualHost,
  plans: () => [],
});
