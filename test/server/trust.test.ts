/**
 * What the server reads depends on where the workspace lies and whether it is trusted (the editor's two declarations
 * `untrustedWorkspaces` and `virtualWorkspaces` in extension/package.json). Driven over the protocol.
 */
import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  type Diagnostic,
  DiagnosticRefreshRequest,
  DidChangeWatchedFilesNotification,
  DocumentDiagnosticRequest,
  type FullDocumentDiagnosticReport,
  WorkspaceDiagnosticRequest,
} from 'vscode-languageserver-protocol/node';
import { type Client, startServer } from './client.ts';

const PALETTE = 'paint ochre = PY43 in linseed\n';
const PULLS = {
  textDocument: { diagnostic: {} },
  workspace: { diagnostics: { refreshSupport: true } },
};
const plan = (path: string) => `use "${path}"\nplan "Invented"\nlayer wash { colour ochre }\n`;
const of = (diagnostics: readonly Diagnostic[], rule: string) =>
  diagnostics.filter((d) => d.code === rule).map((d) => d.message);

describe('a workspace that is not trusted', () => {
  let folder: string;
  let uri: string;
  beforeAll(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-trust-')));
    writeFileSync(join(folder, 'palette.paintplan'), PALETTE);
    writeFileSync(join(folder, 'closed.paintplan'), 'layer a { colour PB99 }\n');
    uri = pathToFileURL(join(folder, 'plan.paintplan')).href;
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('no file that `use` names is read, and the finding says why; trust brings them in', async () => {
    const client = await startServer({
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'a' }],
      initializationOptions: { trusted: false },
    });
    client.open(uri, plan('palette.paintplan'));
    const before = (await client.diagnostics(uri)).diagnostics;
    expect(of(before, 'use-missing').join()).toMatch(/workspace is not trusted/);
    // what may stand in the file is not called unknown
    expect(of(before, 'unknown-name')).toEqual([]);
    await client.connection.sendNotification('paintplan/trusted');
    const after = (await client.diagnosticsAfter(uri, 1)).diagnostics;
    expect([of(after, 'use-missing'), of(after, 'unknown-name')]).toEqual([[], []]);
    await client.stop();
  });

  test('the folder is not walked for plans either; a client that pulls is told to ask again', async () => {
    const client = await startServer({
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'a' }],
      initializationOptions: { trusted: false },
      capabilities: PULLS,
    });
    const asked = new Promise<void>((resolve) =>
      client.connection.onRequest(DiagnosticRefreshRequest.type, () => resolve()),
    );
    const all = () =>
      client.connection.sendRequest(WorkspaceDiagnosticRequest.type, { previousResultIds: [] });
    expect((await all()).items).toEqual([]);
    await client.connection.sendNotification('paintplan/trusted');
    await asked;
    expect((await all()).items.map((i) => i.uri.split('/').at(-1)).sort()).toEqual([
      'closed.paintplan',
      'palette.paintplan',
    ]);
    await client.stop();
  });
});

test('folders on another machine or with strange addresses do no harm', async () => {
  const roots = ['file://elsewhere/share', 'file:///%00', 'nonsense', 'file:'];
  const client = await startServer({ workspaceFolders: roots.map((uri) => ({ uri, name: 'a' })) });
  for (const root of roots) {
    const uri = `${root}/plan.paintplan`;
    client.open(uri, plan('palette.paintplan'));
    const { diagnostics } = await client.diagnostics(uri);
    expect(
      [...of(diagnostics, 'use-missing'), ...of(diagnostics, 'use-outside-workspace')],
      root,
    ).toHaveLength(1);
  }
  await client.stop();
  expect(client.errors()).toBe('');
});

describe('a workspace that lies elsewhere', () => {
  const root = 'vscode-vfs://forge/invented/paintings';
  const uri = `${root}/plans/plan.paintplan`;
  const palette = `${root}/plans/palette.paintplan`;
  const found = async (client: Client) =>
    (
      (await client.connection.sendRequest(DocumentDiagnosticRequest.type, {
        textDocument: { uri },
      })) as FullDocumentDiagnosticReport
    ).items;
  const start = (initializationOptions: unknown) =>
    startServer({ workspaceFolders: [{ uri: root, name: 'a' }], initializationOptions, capabilities: PULLS });

  test('open files are used as they stand; of others the finding says what to do', async () => {
    const client = await start({});
    client.open(uri, plan('palette.paintplan'));
    expect(of(await found(client), 'use-missing').join()).toMatch(/only open files are read: open it/);
    client.open(palette, PALETTE);
    await expect.poll(async () => of(await found(client), 'use-missing'), { timeout: 20_000 }).toEqual([]);
    await client.stop();
  });

  test('an editor that hands files over is asked for those inside the folder, once each, and for no other', async () => {
    const client = await start({ readsFiles: true });
    const asked: string[] = [];
    let text = PALETTE;
    client.connection.onRequest('paintplan/read', (given: { uri: string }): unknown => {
      asked.push(given.uri);
      return given.uri === palette ? { text } : { failed: 'missing' };
    });
    const hostile = [
      '../../../other/secret.paintplan',
      '../../paintings-beside/secret.paintplan',
      '/etc/secret.paintplan',
      '//other/secret.paintplan',
      '\\\\\\\\host\\\\share\\\\secret.paintplan',
      'https://example.invalid/secret.paintplan',
      'file:///etc/secret.paintplan',
      'secret.txt',
    ];
    client.open(
      uri,
      `${['palette.paintplan', 'gone.paintplan', '%2e%2e/x.paintplan', ...hostile]
        .map((p) => plan(p).split('\n')[0])
        .join('\n')}\nplan "Invented"\nlayer wash { colour ochre }\n`,
    );
    // the palette's paint is bound in linseed
    await expect.poll(async () => of(await found(client), 'oily-rags').length, { timeout: 20_000 }).toBe(1);
    const items = await found(client);
    expect(of(items, 'use-outside-workspace')).toHaveLength(hostile.length);
    expect(of(items, 'use-missing')).toHaveLength(2);
    // a percent sign is a letter of a file's name, never a way upwards
    expect(asked.sort()).toEqual(
      [palette, `${root}/plans/gone.paintplan`, `${root}/plans/%252e%252e/x.paintplan`].sort(),
    );
    text = 'paint other = PY43 in linseed\n';
    await client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
      changes: [{ uri: palette, type: 2 }],
    });
    await expect.poll(async () => of(await found(client), 'oily-rags').length, { timeout: 20_000 }).toBe(0);
    await client.stop();
  });

  test('answers of any shape are taken in good part', async () => {
    const answers = [null, 5, 'text', [], {}, { text: 7 }, { failed: 'odd', detail: {} }, 'fail'];
    const client = await start({ readsFiles: true });
    client.connection.onRequest('paintplan/read', (given: { uri: string }): unknown => {
      const answer = answers[Number(/(\d)\.paintplan$/.exec(given.uri)?.[1])];
      if (answer === 'fail') throw new Error('no');
      return answer;
    });
    client.open(uri, answers.map((_, i) => `use "${i}.paintplan"\n`).join(''));
    await expect
      .poll(async () => of(await found(client), 'use-missing').join(), { timeout: 20_000 })
      .not.toMatch(/being asked/);
    expect(of(await found(client), 'use-missing')).toHaveLength(answers.length);
    await client.stop();
    expect(client.errors()).toBe('');
  });

  test('a plan that was never saved has no folder, and is told so', async () => {
    const client = await start({});
    client.open('untitled:Untitled-1', plan('palette.paintplan'));
    const report = (await client.connection.sendRequest(DocumentDiagnosticRequest.type, {
      textDocument: { uri: 'untitled:Untitled-1' },
    })) as FullDocumentDiagnosticReport;
    expect(of(report.items, 'use-missing').join()).toMatch(/save this plan first/);
    await client.stop();
  });
});
