/** The status bar: findings of the plan in front, and what comes next. */
import { type ExtensionContext, StatusBarAlignment, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGE } from './language.ts';

interface Status {
  readonly errors: number;
  readonly warnings: number;
  readonly next?: { readonly layer: string; readonly day: string };
}

const PAUSE_MS = 600;

export function registerStatus(context: ExtensionContext, client: BaseLanguageClient): void {
  const item = window.createStatusBarItem('paintplan.status', StatusBarAlignment.Left, 10);
  item.name = 'Paintplan';
  item.command = 'paintplan.preview';
  item.tooltip = 'Open the preview of this plan';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const refresh = async () => {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== LANGUAGE) return item.hide();
    const status = await client
      .sendRequest<Status | null>('paintplan/status', { uri: document.uri.toString() })
      .catch(() => null);
    if (!status || window.activeTextEditor?.document !== document) return;
    const counted = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`;
    const found =
      status.errors + status.warnings === 0
        ? 'Plan in order'
        : `${counted(status.errors, 'error')}, ${counted(status.warnings, 'warning')}`;
    item.text = status.next ? `${found} · next ‘${status.next.layer}’ likely ${status.next.day}` : found;
    item.show();
  };
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(refresh, PAUSE_MS);
  };
  context.subscriptions.push(
    item,
    window.onDidChangeActiveTextEditor(soon),
    workspace.onDidChangeTextDocument(soon),
    { dispose: () => clearTimeout(timer) },
  );
  soon();
}
