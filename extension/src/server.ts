/**
 * The language server for both hosts in one bundle, since two would hold the same code twice: a process on the
 * desktop, a worker in the browser. What only the other host has is never run.
 */
void ('WorkerGlobalScope' in globalThis
  ? import('../../language/src/server/browser.ts')
  : import('../../language/src/server/node.ts'));
