/** The language server on any connection: what it can do, and which feature answers which request. */
import {
  type Connection,
  DiagnosticRefreshRequest,
  DidChangeConfigurationNotification,
  DocumentDiagnosticReportKind,
  type InitializeParams,
  type InitializeResult,
  MarkupKind,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { hover } from '../features/hover.ts';
import { loneHost, type PlanHost } from '../plan/host.ts';
import { TOOL_NAME, TOOL_VERSION } from '../plan/names.ts';
import type { Severity } from '../plan/plan.ts';
import type { CheckSettings } from '../rules/check.ts';
import { quickFix, rangeOf } from './convert.ts';
import { analysedDocuments, type Open } from './documents.ts';
import { publisher } from './publish.ts';

/** Makes a host for some workspace folders (uris); the browser has none. */
export type Disk = (roots: readonly string[]) => PlanHost;

export function serve(connection: Connection, disk: Disk): void {
  let roots: readonly string[] = [];
  let trusted = true;
  let canPull = false;
  let canConfigure = false;
  let severities: Record<string, Severity | 'off'> = {};
  let host: PlanHost = loneHost;

  const texts = new TextDocuments(TextDocument);
  const documents = analysedDocuments(texts, () => host);
  const settings = (): CheckSettings => ({ severities });
  const publish = publisher(connection, documents, settings, () => canPull);

  const openHost = () => {
    host = trusted ? disk(roots) : loneHost;
    documents.othersChanged();
  };
  const recheck = () => {
    documents.othersChanged();
    if (canPull) connection.sendRequest(DiagnosticRefreshRequest.type).catch(() => {});
    for (const text of texts.all()) publish.changed(text.uri);
  };

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    roots = params.workspaceFolders?.map((f) => f.uri) ?? (params.rootUri ? [params.rootUri] : []);
    trusted = (params.initializationOptions as { trusted?: boolean } | undefined)?.trusted !== false;
    canPull = params.capabilities.textDocument?.diagnostic !== undefined && params.capabilities.workspace?.diagnostics?.refreshSupport === true;
    canConfigure = params.capabilities.workspace?.configuration === true;
    openHost();
    return {
      serverInfo: { name: TOOL_NAME, version: TOOL_VERSION },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
        codeActionProvider: { codeActionKinds: ['quickfix'] },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...(canPull ? { diagnosticProvider: { identifier: TOOL_NAME, interFileDependencies: true, workspaceDiagnostics: false } } : {}),
      },
    };
  });

  connection.onInitialized(() => {
    if (canConfigure) {
      connection.client.register(DidChangeConfigurationNotification.type, { section: TOOL_NAME }).catch(() => {});
      void configure();
    }
  });

  const configure = async () => {
    const configuration = await connection.workspace.getConfiguration(TOOL_NAME).catch(() => undefined);
    severities = configuration?.rules ?? {};
    recheck();
  };
  connection.onDidChangeConfiguration(() => (canConfigure ? configure() : undefined));
  connection.onDidChangeWatchedFiles(recheck);
  connection.onNotification('paintplan/trusted', () => {
    trusted = true;
    openHost();
    recheck();
  });

  texts.onDidChangeContent(({ document }) => {
    publish.changed(document.uri);
    for (const other of texts.all())
      if (other.uri !== document.uri && documents.get(other.uri)?.analysis.plan.uses.some((u) => u.uri === document.uri)) {
        documents.othersChanged();
        publish.changed(other.uri);
      }
  });
  texts.onDidClose(({ document }) => {
    documents.forget(document.uri);
    publish.closed(document.uri);
  });

  /** Answers for an open document; a request on any other gets `otherwise`. */
  const on = <P extends { textDocument: { uri: string } }, R>(otherwise: R, answer: (open: Open, params: P) => R) => (params: P): R => {
    const open = documents.get(params.textDocument.uri);
    return open ? answer(open, params) : otherwise;
  };

  connection.languages.diagnostics.on(
    on({ kind: DocumentDiagnosticReportKind.Full, items: [] }, (open) => ({ kind: DocumentDiagnosticReportKind.Full, items: publish.diagnostics(open) })),
  );

  connection.onHover(
    on(null, (open, { position }) => {
      const { plan, study } = open.analysis;
      const found = hover(plan, study, open.lines.offset(position.line, position.character));
      return found ? { contents: { kind: MarkupKind.Markdown, value: found.markdown }, range: rangeOf(found.place, open.lines) } : null;
    }),
  );

  connection.onCodeAction(
    on([], (open, { range }) => {
      const start = open.lines.offset(range.start.line, range.start.character);
      const end = open.lines.offset(range.end.line, range.end.character);
      const diagnostics = publish.diagnostics(open);
      return publish
        .findings(open)
        .flatMap((f, i) =>
          f.place.start <= end && start <= f.place.end ? f.fixes.map((fix) => quickFix(fix, diagnostics[i] as (typeof diagnostics)[number], open.linesOf)) : [],
        );
    }),
  );

  texts.listen(connection);
  connection.listen();
}
