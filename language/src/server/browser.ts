/** The language server in a worker of the browser. It reads no disk: `use` reaches the open files only. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import type { PlanHost } from '../plan/host.ts';
import { serve } from './server.ts';

const within = (roots: readonly string[], uri: string) =>
  roots.some((r) => uri.startsWith(r.endsWith('/') ? r : `${r}/`));

const virtualDisk = (roots: readonly string[]): PlanHost => ({
  resolve(path, from) {
    try {
      const uri = new URL(path, from).href;
      return roots.length === 0 || within(roots, uri) ? { uri } : { outside: true };
    } catch {
      return { uri: path };
    }
  },
  read: () => ({
    failed: 'missing',
    detail: 'open the file in the editor: in the browser only open files are read',
  }),
});

const scope = self as unknown as DedicatedWorkerGlobalScope;
serve(createConnection(new BrowserMessageReader(scope), new BrowserMessageWriter(scope)), {
  host: virtualDisk,
  plans: () => [],
});
