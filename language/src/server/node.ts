/** The language server on Node: over standard input and output, or the channel the editor passes. */
import { fileURLToPath } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { nodeHost, plansBelow } from './node-files.ts';
import { serve } from './server.ts';

// `paintplan lsp` and plain `node server.js` speak over standard input and output
const asked = process.argv.some((a) => /^--(stdio|node-ipc|socket=|pipe=|clientProcessId)/.test(a));
if (!asked) process.argv.push('--stdio');

const local = (uri: string) => (uri.startsWith('file:') ? [fileURLToPath(uri)] : []);

serve(createConnection(ProposedFeatures.all), {
  host: (roots) => nodeHost(roots.flatMap(local)),
  plans: (roots) => plansBelow(roots.flatMap(local)),
});
