/** The language server on any connection: what it can do, and which feature answers which request. */
import {
  type Connection,
  DiagnosticRefreshRequest,
  DidChangeConfigurationNotification,
  DocumentDiagnosticReportKind,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../features/tokens.ts';
import { loneHost, type PlanHost } from '../plan/host.ts';
import { TOOL_NAME, TOOL_VERSION } from '../plan/names.ts';
import { closedPlans } from './closed.ts';
import { type Fetcher, fetcher, untrustedHost } from './diskless.ts';
import { analysedDocuments } from './documents.ts';
import { answerPreviews } from './preview.ts';
import { publisher } from './publish.ts';
import { answerRequests } from './requests.ts';
import { readSettings, type Settings } from './settings.ts';

/** What lies on the disk below some workspace folders (uris). In the browser there is none. */
export interface Disk {
  /** `handed` gives what the editor handed over of files that are not on this disk, where the editor does so */
  host(roots: readonly string[], handed: Fetcher['handed'] | undefined): PlanHost;
  /** plans below the folders, as uris */
  plans(roots: readonly string[]): readonly string[];
}

export function serve(connection: Connection, disk: Disk): void {
  let roots: readonly string[] = [];
  let trusted = true;
  let canPull = false;
  let canConfigure = false;
  let canFolders = false;
  let settings: Settings = readSettings(undefined);
  let host: PlanHost = loneHost;

  const texts = new TextDocuments(TextDocument);
  const documents = analysedDocuments(texts, () => host);
  const publish = publisher(
    connection,
    documents,
    () => ({ severities: settings.severities }),
    () => canPull,
  );

  const closed = closedPlans(
    () => host,
    () => settings.severities,
  );

  let fetched: Fetcher | undefined;
  const openHost = () => {
    host = trusted ? disk.host(roots, fetched?.handed) : untrustedHost;
    documents.othersChanged();
  };
  const recheck = () => {
    documents.othersChanged();
    if (canPull) connection.sendRequest(DiagnosticRefreshRequest.type).catch(() => {});
    for (const text of texts.all()) publish.changed(text.uri);
  };

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    roots = params.workspaceFolders?.map((f) => f.uri) ?? (params.rootUri ? [params.rootUri] : []);
    const told = params.initializationOptions as { trusted?: boolean; readsFiles?: boolean } | undefined;
    trusted = told?.trusted !== false;
    if (told?.readsFiles === true)
      fetched = fetcher((uri) => connection.sendRequest('paintplan/read', { uri }), recheck);
    canPull =
      params.capabilities.textDocument?.diagnostic !== undefined &&
      params.capabilities.workspace?.diagnostics?.refreshSupport === true;
    canConfigure = params.capabilities.workspace?.configuration === true;
    canFolders = params.capabilities.workspace?.workspaceFolders === true;
    openHost();
    return {
      serverInfo: { name: TOOL_NAME, version: TOOL_VERSION },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
        completionProvider: { resolveProvider: true, triggerCharacters: [' ', '+', ','] },
        codeActionProvider: {
          codeActionKinds: ['quickfix', 'refactor.extract', 'refactor.inline', 'refactor.rewrite'],
        },
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        renameProvider: { prepareProvider: true },
        documentSymbolProvider: true,
        workspaceSymbolProvider: true,
        foldingRangeProvider: true,
        selectionRangeProvider: true,
        documentLinkProvider: {},
        documentFormattingProvider: true,
        documentRangeFormattingProvider: true,
        documentOnTypeFormattingProvider: { firstTriggerCharacter: '}' },
        colorProvider: true,
        inlayHintProvider: true,
        codeLensProvider: {},
        semanticTokensProvider: {
          full: true,
          legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
        },
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        ...(canPull
          ? {
              diagnosticProvider: {
                identifier: TOOL_NAME,
                interFileDependencies: true,
                workspaceDiagnostics: true,
              },
            }
          : {}),
      },
    };
  });

  connection.onInitialized(() => {
    if (canFolders)
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map((f) => f.uri));
        roots = [...roots.filter((r) => !gone.has(r)), ...added.map((f) => f.uri)];
        openHost();
        recheck();
      });
    if (canConfigure) {
      connection.client
        .register(DidChangeConfigurationNotification.type, { section: TOOL_NAME })
        .catch(() => {});
      void configure();
    }
  });

  const configure = async () => {
    const configuration = await connection.workspace.getConfiguration(TOOL_NAME).catch(() => undefined);
    settings = readSettings(configuration);
    recheck();
  };
  connection.onDidChangeConfiguration(() => (canConfigure ? configure() : undefined));
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) fetched?.forget(uri);
    recheck();
  });
  connection.onNotification('paintplan/trusted', () => {
    trusted = true;
    openHost();
    recheck();
  });

  texts.onDidChangeContent(({ document }) => {
    publish.changed(document.uri);
    for (const other of texts.all())
      if (
        other.uri !== document.uri &&
        documents.all(other.uri).some((o) => o.analysis.plan.uses.some((u) => u.uri === document.uri))
      ) {
        documents.othersChanged();
        publish.changed(other.uri);
      }
  });
  texts.onDidClose(({ document }) => {
    documents.forget(document.uri);
    publish.closed(document.uri);
  });

  connection.languages.diagnostics.on(({ textDocument }) => {
    return {
      kind: DocumentDiagnosticReportKind.Full,
      items: documents.all(textDocument.uri).flatMap(publish.diagnostics),
    };
  });
  connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, cancelled) => {
    const previous = new Map(previousResultIds.map((p) => [p.uri, p.value]));
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    const uris = trusted ? disk.plans(roots) : [];
    closed.keep(new Set(uris));
    for (const uri of uris) {
      if (cancelled.isCancellationRequested) break;
      // open files are asked for one by one
      if (texts.get(uri)) continue;
      const report = closed.report(uri, previous.get(uri));
      if (report) items.push(report);
      // a folder of plans must not keep a keystroke waiting
      await new Promise((next) => setTimeout(next));
    }
    return { items };
  });
  answerPreviews(connection, documents, publish);
  answerRequests(
    connection,
    documents,
    () => texts.all().map((t) => t.uri),
    () => (trusted ? disk.plans(roots) : []).filter((uri) => !texts.get(uri)),
    publish,
    () => settings,
  );

  texts.listen(connection);
  connection.listen();
}
