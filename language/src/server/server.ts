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
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../features/tokens.ts';
import { loneHost, type PlanHost } from '../plan/host.ts';
import { TOOL_NAME, TOOL_VERSION } from '../plan/names.ts';
import { analysedDocuments } from './documents.ts';
import { answerPreviews } from './preview.ts';
import { publisher } from './publish.ts';
import { answerRequests } from './requests.ts';
import { readSettings, type Settings } from './settings.ts';

/** Makes a host for some workspace folders (uris); the browser has none. */
export type Disk = (roots: readonly string[]) => PlanHost;

export function serve(connection: Connection, disk: Disk): void {
  let roots: readonly string[] = [];
  let trusted = true;
  let canPull = false;
  let canConfigure = false;
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
    canPull =
      params.capabilities.textDocument?.diagnostic !== undefined &&
      params.capabilities.workspace?.diagnostics?.refreshSupport === true;
    canConfigure = params.capabilities.workspace?.configuration === true;
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
                workspaceDiagnostics: false,
              },
            }
          : {}),
      },
    };
  });

  connection.onInitialized(() => {
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
  connection.onDidChangeWatchedFiles(recheck);
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
  answerPreviews(connection, documents);
  answerRequests(
    connection,
    documents,
    () => texts.all().map((t) => t.uri),
    publish,
    () => settings,
  );

  texts.listen(connection);
  connection.listen();
}
