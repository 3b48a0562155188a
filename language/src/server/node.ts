/** The language server on Node: over standard input and output, or the channel the editor passes. */
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { virtualHost } from './diskless.ts';
import { nodeHost, pathOf, plansBelow } from './node-files.ts';
import { serve } from './server.ts';

// `paintplan lsp` and plain `node server.js` speak over standard input and output
const asked = process.argv.some((a) => /^--(stdio|node-ipc|socket=|pipe=|clientProcessId)/.test(a));
if (!asked) process.argv.push('--stdio');

const local = (uri: string): string[] => {
  const path = uri.startsWith('file:') ? pathOf(uri) : undefined;
  return path === undefined ? [] : [path];
};
const elsewhere = (uri: string) => !uri.startsWith('file:');

serve(createConnection(ProposedFeatures.all), {
  host(roots, handed) {
    const disk = nodeHost(roots.flatMap(local));
    const virtual = virtualHost(roots.filter(elsewhere), handed);
    return {
      resolve: (path, from) => (elsewhere(from) ? virtual : disk).resolve(path, from),
      read: (uri) => (elsewhere(uri) ? virtual : disk).read(uri),
    };
  },
  plans: (roots) => plansBelow(roots.flatMap(local)),
});
