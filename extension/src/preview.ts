/** The preview beside the text: live, follows the cursor both ways, loads nothing from outside. */
import {
  commands,
  type Disposable,
  type ExtensionContext,
  Range,
  Selection,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGE } from './language.ts';

interface Preview {
  readonly title: string;
  readonly body: string;
  readonly style: string;
  readonly layers: readonly { readonly name: string; readonly from: number; readonly to: number }[];
}

const PAUSE_MS = 300;

const nonce = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, '0')).join('');

function frame(panel: WebviewPanel, context: ExtensionContext, style: string): string {
  const own = nonce();
  const file = (name: string) =>
    panel.webview.asWebviewUri(Uri.joinPath(context.extensionUri, 'preview', name)).toString();
  const source = panel.webview.cspSource;
  const policy = `default-src 'none'; style-src ${source} 'nonce-${own}'; script-src 'nonce-${own}'; img-src data:`;
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>Paintplan preview</title>
<style nonce="${own}">${style}</style><link rel="stylesheet" href="${file('preview.css')}"></head>
<body><div id="page"></div><script nonce="${own}" src="${file('preview.js')}"></script></body></html>`;
}

const layerAt = (preview: Preview | undefined, line: number): string =>
  preview?.layers.find((l) => l.from <= line && line <= l.to)?.name ?? '';

function show(context: ExtensionContext, client: BaseLanguageClient, uri: Uri): void {
  const panel = window.createWebviewPanel(
    'paintplan.preview',
    'Preview',
    { viewColumn: ViewColumn.Beside, preserveFocus: true },
    { enableScripts: true, localResourceRoots: [Uri.joinPath(context.extensionUri, 'preview')] },
  );
  let preview: Preview | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let framed = false;

  const refresh = async () => {
    const next = await client
      .sendRequest<Preview | null>('paintplan/preview', { uri: uri.toString() })
      .catch(() => null);
    if (!next) return;
    preview = next;
    panel.title = `Preview: ${next.title}`;
    if (framed) panel.webview.postMessage({ body: next.body, uri: uri.toString() });
    else {
      framed = true;
      panel.webview.html = frame(panel, context, next.style);
    }
  };
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(refresh, PAUSE_MS);
  };
  const follow = (editor: TextEditor) =>
    panel.webview.postMessage({ layer: layerAt(preview, editor.selection.active.line), follow: true });
  const reveal = async (name: string) => {
    const layer = preview?.layers.find((l) => l.name === name);
    if (!layer) return;
    const beside = window.visibleTextEditors.find((e) => e.document.uri.toString() === uri.toString());
    const editor = await window.showTextDocument(await workspace.openTextDocument(uri), {
      viewColumn: beside?.viewColumn ?? ViewColumn.One,
    });
    const range = new Range(layer.from, 0, layer.from, 0);
    editor.selection = new Selection(range.start, range.end);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  };

  const listeners: Disposable[] = [
    workspace.onDidChangeTextDocument((e) => e.document.languageId === LANGUAGE && soon()),
    window.onDidChangeTextEditorSelection(
      (e) => e.textEditor.document.uri.toString() === uri.toString() && follow(e.textEditor),
    ),
    panel.webview.onDidReceiveMessage((message: { ready?: boolean; reveal?: string }) => {
      if (message.ready && preview) panel.webview.postMessage({ body: preview.body, uri: uri.toString() });
      if (message.reveal !== undefined) void reveal(message.reveal);
    }),
  ];
  panel.onDidDispose(() => {
    clearTimeout(timer);
    for (const l of listeners) l.dispose();
  });
  void refresh();
}

const FIRST_PLAN = `plan "A first try"
support linen 24 x 30 cm

ground priming { material acrylic }
underlayer grey { colour 3 PW6 + 1 PBk9   film thin }
glaze yellow {
  colour PY150
  medium 50 % stand-oil
  film 8 µm
}
`;

export function registerPreview(context: ExtensionContext, client: BaseLanguageClient): void {
  context.subscriptions.push(
    commands.registerCommand('paintplan.firstPlan', async () =>
      window.showTextDocument(await workspace.openTextDocument({ language: LANGUAGE, content: FIRST_PLAN })),
    ),
    commands.registerCommand('paintplan.preview', (uri?: Uri) => {
      const target =
        uri instanceof Uri
          ? uri
          : window.activeTextEditor?.document.languageId === LANGUAGE
            ? window.activeTextEditor.document.uri
            : undefined;
      if (target) show(context, client, target);
      else
        void window.showInformationMessage(
          'Open a plan first: the preview shows the plan in the active editor.',
        );
    }),
  );
}
