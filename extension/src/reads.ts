/** Hands plan files of a workspace that is on no disk of the server's (a repository on a forge, the browser) to it. */
import { FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { decoded } from '../../language/src/plan/encoding.ts';

/** Bytes, as on a disk. */
const LARGEST = 2 * 1024 * 1024;

type Handed = { readonly text: string } | { readonly failed: string; readonly detail?: string };

const refused = (detail: string): Handed => ({ failed: 'unreadable', detail });

/** Reads only plans inside an opened folder of a trusted workspace, and through no link, which could lead anywhere. */
async function handed(given: unknown): Promise<Handed> {
  const uri = Uri.parse(String((given as { uri?: unknown } | null)?.uri), true);
  const folder = workspace.getWorkspaceFolder(uri);
  if (
    !workspace.isTrusted ||
    !folder ||
    !uri.path.endsWith('.paintplan') ||
    /(^|\/)\.\.?(\/|$)/.test(uri.path)
  )
    return refused('it lies outside the workspace');
  try {
    const steps = uri.path.slice(folder.uri.path.length).split('/').filter(Boolean);
    for (let n = 1; n < steps.length; n++) {
      const above = await workspace.fs.stat(Uri.joinPath(folder.uri, ...steps.slice(0, n)));
      if (above.type & FileType.SymbolicLink) return refused('a folder on the way is a link');
    }
    const { type, size } = await workspace.fs.stat(uri);
    if (type & FileType.SymbolicLink) return refused('it is a link');
    if (type !== FileType.File) return refused('it is no regular file');
    if (size > LARGEST)
      return { failed: 'too-large', detail: `${(size / 1024 / 1024).toFixed(1)} MB; at most 2 MB are read` };
    const read = decoded(await workspace.fs.readFile(uri));
    // an open document has no byte order mark
    return 'text' in read ? { text: read.text.replace(/^\ufeff/, '') } : refused(`it ${read.not}`);
  } catch {
    return { failed: 'missing' };
  }
}

export const registerReads = (client: BaseLanguageClient) => client.onRequest('paintplan/read', handed);
