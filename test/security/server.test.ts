/**
 * The built servers, in the layout a user has them, through a whole session in a hostile workspace: they read what lies
 * in it and in their own folder, write nothing, start nothing, and open no socket.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  CodeActionRequest,
  CompletionRequest,
  createProtocolConnection,
  type Diagnostic,
  DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  DocumentLinkRequest,
  DocumentSymbolRequest,
  ExitNotification,
  HoverRequest,
  InitializedNotification,
  InitializeRequest,
  IPCMessageReader,
  IPCMessageWriter,
  type ProtocolConnection,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  WorkspaceDiagnosticRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver-protocol/node';
import { astray, confined, installed, temporary, type Used, usedIn } from './watched.ts';
import { type Hostile, hostileWorkspace, usingAll } from './workspace.ts';

let base: string;
let hostile: Hostile;
let bundles: ReturnType<typeof installed>;
beforeAll(() => {
  base = temporary();
  hostile = hostileWorkspace(base);
  bundles = installed(join(base, 'bundles'));
});
afterAll(() => rmSync(base, { recursive: true, force: true }));

interface Session {
  readonly diagnostics: readonly Diagnostic[];
  readonly workspace: readonly string[];
  readonly links: readonly (string | undefined)[];
  readonly used: readonly Used[];
  readonly said: string;
  /** sockets of the process while it runs, by what /proc says of them; Linux only */
  readonly sockets: readonly string[] | undefined;
}

/** Kernel tables that list a socket by its inode. */
const TABLES = ['tcp', 'tcp6', 'udp', 'udp6', 'raw', 'raw6', 'packet', 'netlink'];

function socketsOf(pid: number): string[] | undefined {
  if (!existsSync(`/proc/${pid}/fd`)) return undefined;
  const fds = readdirSync(`/proc/${pid}/fd`).flatMap((fd) => {
    try {
      const inode = /^socket:\[(\d+)\]$/.exec(readlinkSync(`/proc/${pid}/fd/${fd}`))?.[1];
      return inode ? [{ fd, inode }] : [];
    } catch {
      return [];
    }
  });
  const rows = TABLES.flatMap((table) => {
    try {
      return readFileSync(`/proc/${pid}/net/${table}`, 'utf8')
        .split('\n')
        .map((line) => ({ table, line }));
    } catch {
      return [];
    }
  });
  return fds.map(({ fd, inode }) => {
    const row = rows.find(({ line }) => line.split(/\s+/).includes(inode));
    return row ? `${fd} ${row.table}` : `${fd} local`;
  });
}

function connected(child: ChildProcess, ipc: boolean): ProtocolConnection {
  return ipc
    ? createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child))
    : createProtocolConnection(
        new StreamMessageReader(child.stdout as Readable),
        new StreamMessageWriter(child.stdin as Writable),
      );
}

async function session(
  server: string,
  folders: readonly string[],
  ipc: boolean,
  options: { readonly trusted?: boolean; readonly before?: readonly string[] } = {},
): Promise<Session> {
  const { trusted = true, before = [] } = options;
  const command = [...before, process.execPath, ...confined(folders), server, ipc ? '--node-ipc' : '--stdio'];
  const child = spawn(command[0] as string, command.slice(1), {
    cwd: hostile.workspace,
    stdio: ipc ? ['ignore', 'pipe', 'pipe', 'ipc'] : 'pipe',
    env: { PATH: process.env.PATH, HOME: hostile.outside },
  });
  let errors = '';
  child.stderr?.on('data', (data) => {
    errors += data;
  });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const connection = connected(child, ipc);
  connection.listen();
  const died = ended.then(() => {
    throw new Error(`The server ended early: ${errors.slice(-2000)}`);
  });
  died.catch(() => {});
  const within = <T>(work: Promise<T>): Promise<T> => Promise.race([work, died]);

  await within(
    connection.sendRequest(InitializeRequest.type, {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: [{ uri: pathToFileURL(hostile.workspace).href, name: 'hostile' }],
      initializationOptions: { trusted },
      capabilities: {
        textDocument: { diagnostic: {} },
        workspace: { diagnostics: { refreshSupport: true }, workspaceFolders: true },
      },
    }),
  );
  await connection.sendNotification(InitializedNotification.type, {});
  const uri = pathToFileURL(join(hostile.workspace, 'plan.paintplan')).href;
  const textDocument = { uri };
  const open = (given: string, languageId: string, text: string) =>
    connection.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri: given, languageId, version: 1, text },
    });
  await open(uri, 'paintplan', usingAll(hostile));
  await open(pathToFileURL(join(hostile.outside, 'lone.paintplan')).href, 'paintplan', usingAll(hostile));
  await open(
    pathToFileURL(join(hostile.workspace, 'note.md')).href,
    'markdown',
    `# Invented\n\n\`\`\`paintplan\n${usingAll(hostile)}\`\`\`\n<img src="http://example.invalid/x.png">\n`,
  );
  const full = (await within(connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument }))) as {
    items: Diagnostic[];
  };
  const position = { line: 0, character: 6 };
  const options_ = { tabSize: 2, insertSpaces: true };
  const range = { start: position, end: position };
  await within(
    Promise.all([
      connection.sendRequest(HoverRequest.type, { textDocument, position }),
      connection.sendRequest(CompletionRequest.type, { textDocument, position }),
      connection.sendRequest(DocumentSymbolRequest.type, { textDocument }),
      connection.sendRequest(WorkspaceSymbolRequest.type, { query: '' }),
      connection.sendRequest(DocumentFormattingRequest.type, { textDocument, options: options_ }),
      connection.sendRequest(CodeActionRequest.type, { textDocument, range, context: { diagnostics: [] } }),
      connection.sendRequest('paintplan/preview', { uri }),
      connection.sendRequest('paintplan/status', { uri }),
    ]),
  );
  await connection.sendNotification(DidChangeTextDocumentNotification.type, {
    textDocument: { uri, version: 2 },
    contentChanges: [{ text: `${usingAll(hostile)}\n` }],
  });
  const links = await within(connection.sendRequest(DocumentLinkRequest.type, { textDocument }));
  const all = await within(
    connection.sendRequest(WorkspaceDiagnosticRequest.type, { previousResultIds: [] }),
  );
  const sockets = socketsOf(child.pid as number);
  await within(connection.sendRequest(ShutdownRequest.type));
  await connection.sendNotification(ExitNotification.type);
  await ended;
  const { used, rest } = usedIn(errors);
  return {
    diagnostics: full.items,
    workspace: all.items.map((i) => i.uri.split('/').at(-1) as string).sort(),
    links: (links ?? []).map((l) => l.target?.split('/').at(-1)),
    used,
    said: rest.trim(),
    sockets,
  };
}

/** How many descriptors are sockets only because Node passes standard streams and its own channel that way. */
const STREAMS = { stdio: ['0', '1', '2'], ipc: ['1', '2', '3'] };

const servers = [
  ['the command line’s server over standard streams', 'language', false],
  ['the extension’s server over the editor’s channel', 'extension', true],
] as const;

describe.each(servers)('%s', (_, which, ipc) => {
  const server = () => join(bundles[which], 'out', 'server.js');
  const folders = () => [bundles[which], hostile.workspace];

  test('reads the workspace and nothing else, opens no socket, writes and starts nothing', async () => {
    const went = await session(server(), folders(), ipc);
    expect(astray(went.used, folders())).toEqual([]);
    expect(went.said).toBe('');
    // the watch was on: the palette that may be read was seen being read
    expect(went.used.some((u) => u.name === 'openSync' && u.what[0]?.endsWith('earths.paintplan'))).toBe(
      true,
    );
    const found = (rule: string) => went.diagnostics.filter((d) => d.code === rule).length;
    for (const rule of ['use-outside-workspace', 'use-missing'] as const)
      expect(found(rule), rule).toBe(hostile.uses.filter(([, r]) => r === rule).length);
    expect(went.diagnostics.filter((d) => d.code === 'unknown-name')).toEqual([]);
    expect(went.links).toEqual(['earths.paintplan']);
    // neither links nor pipes nor folders are taken for plans, and 64 MB are not read
    expect(went.workspace).toEqual(['binary.paintplan', 'closed.paintplan', 'earths.paintplan']);
    if (went.sockets) {
      expect(went.sockets.filter((s) => !s.endsWith(' local'))).toEqual([]);
      const streams = STREAMS[ipc ? 'ipc' : 'stdio'];
      expect(
        went.sockets.map((s) => s.split(' ')[0]).filter((fd) => !streams.includes(fd as string)),
      ).toEqual([]);
    }
  }, 120_000);

  test('in a workspace that is not trusted it reads its own folder only', async () => {
    const went = await session(server(), folders(), ipc, { trusted: false });
    expect(astray(went.used, [bundles[which]])).toEqual([]);
    expect(went.links).toEqual([]);
    expect(went.workspace).toEqual([]);
    expect(went.diagnostics.filter((d) => d.code === 'use-missing').map((d) => d.message)).toHaveLength(
      hostile.uses.length + 1,
    );
  }, 120_000);
});

const traced = spawnSync('strace', ['-f', '-o', '/dev/null', 'true']).status === 0;

// an extra where strace may be used: what the kernel was asked, below all that a hook in the program can see
test.runIf(traced)(
  'the kernel is asked for no socket of the network and for no file outside',
  async () => {
    const log = join(mkdtempSync(join(tmpdir(), 'paintplan-trace-')), 'log');
    const folders = [bundles.language, hostile.workspace];
    const strace = ['strace', '-f', '-e', 'trace=%file,%network', '-s', '4096', '-o', log];
    await session(join(bundles.language, 'out', 'server.js'), folders, false, { before: strace });
    const lines = readFileSync(log, 'utf8').split('\n');
    rmSync(join(log, '..'), { recursive: true, force: true });
    expect(lines.filter((l) => /\b(socket|connect|bind|listen)\(/.test(l) && !/AF_UNIX/.test(l))).toEqual([]);
    expect(lines.some((l) => l.includes('earths.paintplan'))).toBe(true);
    // nothing beside the workspace is asked about, not even whether it is there; where links lead is read from the links
    const asked = lines.map((l) => /\w+\([^"]*"([^"]*)"/.exec(l)?.[1] ?? '');
    expect(asked.filter((p) => p.startsWith(hostile.outside))).toEqual([]);
    const opened = lines.flatMap((l) => {
      const path = /\bopen(?:at)?\((?:[^"]*, )?"([^"]+)".*\) = \d+/.exec(l)?.[1];
      return path ? [path] : [];
    });
    // Node's program, its libraries and what it asks of the system at its start
    const SYSTEM = /^\/(lib|lib64|usr|proc|sys|dev|etc\/(ld\.so|ssl|localtime|nsswitch|passwd|resolv))/;
    const own = [...folders, join(process.execPath, '..'), join(import.meta.dirname)];
    expect(
      opened.filter(
        (p) => p.startsWith('/') && !SYSTEM.test(p) && !own.some((f) => !relative(f, p).startsWith('..')),
      ),
    ).toEqual([]);
  },
  180_000,
);
