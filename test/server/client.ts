/** A language server in a process of its own, spoken to over the real protocol. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import {
  createProtocolConnection,
  DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  InitializedNotification,
  type InitializeParams,
  InitializeRequest,
  type InitializeResult,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

const SERVER = fileURLToPath(new URL('../../language/src/server/node.ts', import.meta.url));

export interface Client {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  readonly pid: number | undefined;
  open(uri: string, text: string, languageId?: string): void;
  change(uri: string, version: number, text: string): void;
  /** the next diagnostics of a document, at this version or later */
  diagnostics(uri: string, version?: number): Promise<PublishDiagnosticsParams>;
  /** diagnostics that come after now; peers that state no version are taken at their word */
  diagnosticsAfter(uri: string, version: number): Promise<PublishDiagnosticsParams>;
  /** what the server wrote on standard error: nothing, when all is well */
  errors(): string;
  stop(): Promise<void>;
}

export async function startServer(
  params: Partial<InitializeParams> = {},
  command: readonly string[] = [SERVER, '--stdio'],
): Promise<Client> {
  const child = spawn(process.execPath, [...command], { stdio: 'pipe' });
  let errors = '';
  child.stderr.on('data', (data) => {
    errors += data;
  });
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const seen = new Map<string, PublishDiagnosticsParams>();
  const waiting: { uri: string; version: number; resolve: (p: PublishDiagnosticsParams) => void }[] = [];
  connection.onNotification(PublishDiagnosticsNotification.type, (p) => {
    seen.set(p.uri, p);
    for (const w of waiting.filter(
      (x) => x.uri === p.uri && (p.version ?? Number.MAX_SAFE_INTEGER) >= x.version,
    )) {
      waiting.splice(waiting.indexOf(w), 1);
      w.resolve(p);
    }
  });
  connection.listen();
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    rootUri: null,
    capabilities: {},
    ...params,
  });
  await connection.sendNotification(InitializedNotification.type, {});
  return {
    connection,
    initialized,
    pid: child.pid,
    open: (uri, text, languageId = 'paintplan') =>
      void connection.sendNotification(DidOpenTextDocumentNotification.type, {
        textDocument: { uri, languageId, version: 1, text },
      }),
    change: (uri, version, text) =>
      void connection.sendNotification(DidChangeTextDocumentNotification.type, {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    diagnostics: (uri, version = 1) =>
      new Promise((resolve) => {
        const known = seen.get(uri);
        if (known && (known.version ?? Number.MAX_SAFE_INTEGER) >= version) resolve(known);
        else waiting.push({ uri, version, resolve });
      }),
    diagnosticsAfter: (uri, version) => new Promise((resolve) => waiting.push({ uri, version, resolve })),
    errors: () => errors,
    async stop() {
      await connection.sendRequest(ShutdownRequest.type);
      await connection.sendNotification(ExitNotification.type);
      connection.end();
      child.kill();
    },
  };
}
