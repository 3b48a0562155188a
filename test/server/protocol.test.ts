/** Every request over the real protocol (LSP 3.17 types): right answers on a plan, empty ones where there is nothing. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  CodeActionRequest,
  CodeLensRequest,
  ColorPresentationRequest,
  CompletionRequest,
  CompletionResolveRequest,
  DefinitionRequest,
  DidCloseTextDocumentNotification,
  DocumentColorRequest,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  type Position,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensRequest,
  type TextEdit,
  WorkspaceDiagnosticRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver-protocol/node';
import { linesOf } from '../../language/src/plan/lines.ts';
import { type Client, startServer } from './client.ts';

const uri = 'file:///plan.paintplan';
const text = `plan "A jug"
support linen 30 x 40 cm
area jug 40 %
area wall 60 %
paint umber = PBr7 raw-umber in linseed
paint white = PW6 in linseed
paint blue = PB29 in linseed
medium rich = 20 % turpentine + 80 % stand-oil
mix shade = 2 umber + 1 blue
ground priming { material acrylic }
underlayer grey {
  on jug
  colour 3 white + 1 umber
  film 20 µm
}
glaze deep {
  on jug
  prepare oil-out with stand-oil
  colour shade
  medium 60 % rich
  film 8 µm
}
target jug lab(30 0 -10) within 6
`;
const lines = linesOf(text);
const at = (words: string, inside = 0): Position => {
  const p = lines.at(text.indexOf(words) + inside);
  return { line: p.line, character: p.column };
};
const apply = (source: string, edits: readonly TextEdit[]): string => {
  const of = linesOf(source);
  const offset = (p: Position) => of.offset(p.line, p.character);
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce((t, e) => t.slice(0, offset(e.range.start)) + e.newText + t.slice(offset(e.range.end)), source);
};
const document = { textDocument: { uri } };

let client: Client;
beforeAll(async () => {
  client = await startServer();
  client.open(uri, text);
  await client.diagnostics(uri);
});
afterAll(async () => {
  expect(client.errors()).toBe('');
  await client.stop();
});

describe('on a plan', () => {
  test('diagnostics carry the version, the rule and related places', async () => {
    client.open('file:///white.paintplan', text.replace('colour shade', 'colour shade + white'));
    const found = await client.diagnostics('file:///white.paintplan');
    expect(found.version).toBe(1);
    const white = found.diagnostics.find((d) => d.code === 'opaque-white-in-glaze');
    expect(white?.message).toMatch(/milky/);
    expect(white?.source).toBe('paintplan');
    const actions = await client.connection.sendRequest(CodeActionRequest.type, {
      textDocument: { uri: 'file:///white.paintplan' },
      range: white!.range,
      context: { diagnostics: [white!] },
    });
    expect(actions?.map((a) => a.title)).toContain('Make it a scumble');
  });

  test('hover: pigment, medium, layer', async () => {
    const hover = async (p: Position) =>
      JSON.stringify(
        (await client.connection.sendRequest(HoverRequest.type, { ...document, position: p }))?.contents,
      );
    expect(await hover(at('PB29', 1))).toMatch(/ultramarine.*oil absorption.*lightfastness.*hazards/s);
    expect(await hover(at('60 % rich', 6))).toMatch(/turpentine.*20 %.*stand/s);
    expect(await hover(at('deep', 1))).toMatch(/fatness.*grey.*data:image\/svg\+xml;base64,/s);
  });

  test('completion knows where it is', async () => {
    const labels = async (p: Position) => {
      const found = await client.connection.sendRequest(CompletionRequest.type, { ...document, position: p });
      return (Array.isArray(found) ? found : (found?.items ?? [])).map((i) => i.label);
    };
    expect(await labels(at('shade\n  medium', 0))).toEqual(
      expect.arrayContaining(['umber', 'shade', 'PB29', 'PBr7 raw-umber']),
    );
    expect(await labels(at('on jug\n  prepare', 3))).toEqual(expect.arrayContaining(['jug', 'wall']));
    expect(await labels(at('oil-out with', 0))).toEqual(['wipe', 'abrade', 'oil-out', 'wash']);
    expect(await labels(at('acrylic }', 0))).toEqual(expect.arrayContaining(['chalk-glue', 'acrylic']));
    expect(await labels(at('film 8', 0))).toEqual(expect.arrayContaining(['coats', 'wait']));
    expect(await labels(at('glaze deep', 0))).toEqual(expect.arrayContaining(['glaze', 'scumble', 'target']));
    expect(await labels(at('A jug', 2))).toEqual([]);
    const resolved = await client.connection.sendRequest(CompletionResolveRequest.type, {
      label: 'PB29',
      data: 'pigment',
    });
    expect(JSON.stringify(resolved.documentation)).toMatch(/oil absorption/);
  });

  test('in a glaze transparent pigments come first', async () => {
    const found = await client.connection.sendRequest(CompletionRequest.type, {
      ...document,
      position: at('shade\n  medium'),
    });
    const items = (Array.isArray(found) ? found : (found?.items ?? []))
      .filter((i) => /^P[A-Z]/.test(i.label))
      .sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1));
    expect(items[0]?.detail).toMatch(/, transparent$/);
    expect(items.at(-1)?.detail).toMatch(/, opaque$/);
  });

  test('definition, references, highlights, rename', async () => {
    const position = at('colour shade', 8);
    expect(
      await client.connection.sendRequest(DefinitionRequest.type, { ...document, position }),
    ).toMatchObject({ uri, range: { start: at('shade =') } });
    const uses = await client.connection.sendRequest(ReferencesRequest.type, {
      ...document,
      position,
      context: { includeDeclaration: true },
    });
    expect(uses).toHaveLength(2);
    expect(
      await client.connection.sendRequest(DocumentHighlightRequest.type, { ...document, position }),
    ).toHaveLength(2);
    expect(
      await client.connection.sendRequest(PrepareRenameRequest.type, { ...document, position }),
    ).toMatchObject({ placeholder: 'shade' });
    const renamed = await client.connection.sendRequest(RenameRequest.type, {
      ...document,
      position,
      newName: 'dusk',
    });
    expect(apply(text, renamed?.changes?.[uri] ?? [])).toBe(text.replaceAll('shade', 'dusk'));
    await expect(
      client.connection.sendRequest(RenameRequest.type, { ...document, position, newName: 'glaze' }),
    ).rejects.toThrow(/word of the language/);
  });

  test('outline, folding, selection, links', async () => {
    const outline = await client.connection.sendRequest(DocumentSymbolRequest.type, document);
    expect(JSON.stringify(outline)).toMatch(/"name":"jug".*"name":"deep"/);
    expect(
      (await client.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'DEE' }))?.map(
        (s) => s.name,
      ),
    ).toContain('deep');
    expect(await client.connection.sendRequest(FoldingRangeRequest.type, document)).toHaveLength(2);
    const chain = await client.connection.sendRequest(SelectionRangeRequest.type, {
      ...document,
      positions: [at('8 µm')],
    });
    let depth = 0;
    for (let s = chain?.[0]; s; s = s.parent as typeof s) depth++;
    expect(depth).toBeGreaterThanOrEqual(5);
    expect(await client.connection.sendRequest(DocumentLinkRequest.type, document)).toEqual([]);
  });

  test('formatting brings the canonical form and nothing else', async () => {
    const messy = 'file:///messy.paintplan';
    client.open(messy, 'area   sky 50%\r\nglaze a{on sky\r\n film 8um }\r\n');
    const options = { tabSize: 2, insertSpaces: true };
    const edits = await client.connection.sendRequest(DocumentFormattingRequest.type, {
      textDocument: { uri: messy },
      options,
    });
    expect(apply('area   sky 50%\r\nglaze a{on sky\r\n film 8um }\r\n', edits ?? [])).toBe(
      'area sky 50 %\r\nglaze a {\r\n  on sky\r\n  film 8 µm\r\n}\r\n',
    );
    const some = await client.connection.sendRequest(DocumentRangeFormattingRequest.type, {
      textDocument: { uri: messy },
      options,
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 4 } },
    });
    expect(some?.map((e) => e.newText).join('')).toMatch(/^area sky 50 %/);
    const typed = await client.connection.sendRequest(DocumentOnTypeFormattingRequest.type, {
      textDocument: { uri: messy },
      options,
      ch: '}',
      position: { line: 2, character: 11 },
    });
    expect(typed?.[0]?.newText).toMatch(/^glaze a \{/);
  });

  test('colours: predicted ones are shown, written ones may be picked', async () => {
    const colours = await client.connection.sendRequest(DocumentColorRequest.type, document);
    expect(colours.length).toBeGreaterThanOrEqual(4);
    const target = colours.find((c) => c.range.start.line === at('lab(').line)!;
    expect(
      (
        await client.connection.sendRequest(ColorPresentationRequest.type, {
          ...document,
          color: target.color,
          range: target.range,
        })
      ).length,
    ).toBeGreaterThan(1);
    const lines_ = (words: string) =>
      colours.find((c) => c.range.start.line === at(words).line && c.range.start.character === 0);
    for (const declared of ['paint umber', 'mix shade', 'glaze deep'])
      expect(lines_(declared), declared).toBeDefined();
    const layer = lines_('glaze deep')!;
    const kept = await client.connection.sendRequest(ColorPresentationRequest.type, {
      ...document,
      color: layer.color,
      range: layer.range,
    });
    expect(kept).toEqual([{ label: 'glaze', textEdit: { range: layer.range, newText: 'glaze' } }]);
  });

  test('hints, lenses, tokens, rewrites', async () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const hints = await client.connection.sendRequest(InlayHintRequest.type, { ...document, range });
    expect(JSON.stringify(hints)).toMatch(/fatness/);
    expect(JSON.stringify(hints)).toMatch(/predicted ΔE00/);
    expect(JSON.stringify(await client.connection.sendRequest(CodeLensRequest.type, document))).toMatch(
      /likely [^"]* \(not before [^"]*, safe from /,
    );
    const tokens = await client.connection.sendRequest(SemanticTokensRequest.type, document);
    expect(tokens?.data.length).toBeGreaterThan(50);
    const actions = await client.connection.sendRequest(CodeActionRequest.type, {
      ...document,
      range: { start: at('3 white'), end: at('3 white') },
      context: { diagnostics: [] },
    });
    expect(actions?.map((a) => a.title).join('; ')).toMatch(/percentages.*|mix grey-mix/);
  });
});

describe('where there is nothing', () => {
  const gone = { textDocument: { uri: 'file:///never-opened.paintplan' } };
  const zero = { line: 0, character: 0 };

  test('requests on a file that is not open are answered, not failed', async () => {
    const c = client.connection;
    expect(await c.sendRequest(HoverRequest.type, { ...gone, position: zero })).toBeNull();
    expect(await c.sendRequest(CompletionRequest.type, { ...gone, position: zero })).toEqual([]);
    expect(await c.sendRequest(DefinitionRequest.type, { ...gone, position: zero })).toBeNull();
    expect(await c.sendRequest(DocumentSymbolRequest.type, gone)).toEqual([]);
    expect(await c.sendRequest(RenameRequest.type, { ...gone, position: zero, newName: 'a' })).toBeNull();
    expect(await c.sendRequest(DocumentColorRequest.type, gone)).toEqual([]);
    expect(await c.sendRequest(DocumentDiagnosticRequest.type, gone)).toMatchObject({
      kind: 'full',
      items: [],
    });
  });

  test('positions outside the text are clamped', async () => {
    for (const position of [
      { line: 9999, character: 0 },
      { line: 0, character: 9999 },
    ]) {
      expect(await client.connection.sendRequest(HoverRequest.type, { ...document, position })).toBeNull();
      expect(
        await client.connection.sendRequest(SelectionRangeRequest.type, {
          ...document,
          positions: [position],
        }),
      ).toHaveLength(1);
      await client.connection.sendRequest(CompletionRequest.type, { ...document, position });
    }
  });

  test('a closed document loses its diagnostics', async () => {
    const closing = 'file:///closing.paintplan';
    client.open(closing, 'glaze x { colour PB99 }');
    expect((await client.diagnostics(closing)).diagnostics.length).toBeGreaterThan(0);
    await client.connection.sendNotification(DidCloseTextDocumentNotification.type, {
      textDocument: { uri: closing },
    });
    expect(
      await client.connection.sendRequest(HoverRequest.type, {
        textDocument: { uri: closing },
        position: zero,
      }),
    ).toBeNull();
  });
});

test('a client that pulls gets the open file and, of the workspace, the files that are not open', async () => {
  const root = pathToFileURL(resolve('examples/faulty')).href;
  const puller = await startServer({
    workspaceFolders: [{ uri: root, name: 'faulty' }],
    capabilities: { textDocument: { diagnostic: {} }, workspace: { diagnostics: { refreshSupport: true } } },
  });
  const open = `${root}/slips.paintplan`;
  puller.open(open, 'plan "Slips"\nlayer a { colour PB99 }\n');
  const own = await puller.connection.sendRequest(DocumentDiagnosticRequest.type, {
    textDocument: { uri: open },
  });
  expect(JSON.stringify(own)).toMatch(/unknown-pigment/);
  const all = await puller.connection.sendRequest(WorkspaceDiagnosticRequest.type, { previousResultIds: [] });
  const uris = all.items.map((i) => i.uri);
  expect(uris).toContain(`${root}/lean-over-fat.paintplan`);
  expect(uris).not.toContain(open);
  expect(JSON.stringify(all)).toMatch(/lean-over-fat/);
  await puller.stop();
});

test('a workspace pull says what changed since the last one, and of the rest that it stands', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'paintplan-pull-'));
  const file = (name: string) => pathToFileURL(join(folder, name)).href;
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
  write('palette.paintplan', 'paint blue = PB29 in linseed\n');
  write('moor.paintplan', 'plan "Moor"\nuse "palette.paintplan"\nlayer a { colour blue }\n');
  write('lake.paintplan', 'plan "Lake"\nlayer a { colour PB99 }\n');
  const puller = await startServer({
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'pull' }],
    capabilities: { textDocument: { diagnostic: {} }, workspace: { diagnostics: { refreshSupport: true } } },
  });
  let last: { uri: string; value: string }[] = [];
  const pull = async () => {
    const { items } = await puller.connection.sendRequest(WorkspaceDiagnosticRequest.type, {
      previousResultIds: last,
    });
    last = items.map((i) => ({ uri: i.uri, value: i.resultId as string }));
    return new Map(items.map((i) => [i.uri, i]));
  };
  try {
    const names = ['lake', 'moor', 'palette'].map((n) => file(`${n}.paintplan`));
    const first = await pull();
    expect([...first.keys()].sort()).toEqual(names);
    for (const item of first.values()) expect(item.kind).toBe('full');
    expect(new Set(last.map((l) => l.value)).size).toBe(3);
    for (const item of (await pull()).values())
      expect(item).toEqual({
        uri: item.uri,
        version: null,
        kind: 'unchanged',
        resultId: first.get(item.uri)?.resultId,
      });

    // what a plan uses is a part of what is said of it
    write('palette.paintplan', 'paint azure = PB29 in linseed\n');
    const after = await pull();
    expect(names.map((n) => after.get(n)?.kind)).toEqual(['unchanged', 'full', 'full']);
    expect(JSON.stringify(after.get(names[1] as string))).toMatch(/unknown-name/);

    // ids that this server never gave are nobody's
    last = names.map((uri) => ({ uri, value: 'of-another-server' }));
    for (const item of (await pull()).values()) expect(item.kind).toBe('full');
  } finally {
    await puller.stop();
    rmSync(folder, { recursive: true, force: true });
  }
});

test('an untrusted workspace reads no other file', async () => {
  const folder = resolve('examples/landscape');
  const careful = await startServer({
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'a' }],
    initializationOptions: { trusted: false },
  });
  const moor = pathToFileURL(resolve(folder, 'moor-after-rain.paintplan')).href;
  careful.open(moor, readFileSync(resolve(folder, 'moor-after-rain.paintplan'), 'utf8'));
  expect((await careful.diagnostics(moor)).diagnostics.filter((d) => d.code === 'use-missing')).toHaveLength(
    2,
  );
  await careful.connection.sendNotification('paintplan/trusted');
  const after = await careful.diagnosticsAfter(moor, 1);
  expect(after.diagnostics.filter((d) => d.code === 'use-missing')).toEqual([]);
  await careful.stop();
});

test('plans fenced in a Markdown note are checked in place', async () => {
  const note = 'file:///note.md';
  client.open(note, '# Note\n\n```paintplan\nplan "A"\nlayer a { colour PB99 }\n```\n\ntext\n', 'markdown');
  const found = await client.diagnostics(note);
  expect(found.diagnostics.find((d) => d.code === 'unknown-pigment')?.range.start).toEqual({
    line: 4,
    character: 17,
  });
  const hover = await client.connection.sendRequest(HoverRequest.type, {
    textDocument: { uri: note },
    position: { line: 4, character: 7 },
  });
  expect(JSON.stringify(hover)).toMatch(/layer a/);
  expect(
    await client.connection.sendRequest(HoverRequest.type, {
      textDocument: { uri: note },
      position: { line: 0, character: 1 },
    }),
  ).toBeNull();
});

test('preview and status: the findings are those of the diagnostics, colours included', async () => {
  const white = 'file:///status.paintplan';
  client.open(white, text.replace('colour shade', 'colour shade + white'));
  const status = await client.connection.sendRequest<{ errors: number; warnings: number }>(
    'paintplan/status',
    { uri: white },
  );
  expect(status.warnings).toBeGreaterThan(0);
  const preview = await client.connection.sendRequest<{
    title: string;
    body: string;
    layers: { name: string }[];
  }>('paintplan/preview', { uri: white });
  expect([preview.title, preview.layers.map((l) => l.name)]).toEqual(['A jug', ['priming', 'grey', 'deep']]);
  expect(preview.body).toMatch(/<svg [\s\S]*opaque-white-in-glaze|opaque-white-in-glaze[\s\S]*<svg /);
  expect(
    await client.connection.sendRequest('paintplan/preview', { uri: 'file:///gone.paintplan' }),
  ).toBeNull();
});

test('a plan fenced in a note is drawn on request; one without layers draws nothing', async () => {
  const draw = (text: string) => client.connection.sendRequest<string>('paintplan/drawing', { text });
  expect(await draw(text)).toMatch(/^<svg [\s\S]*deep[\s\S]*<\/svg>$/);
  expect([await draw('support linen 1 x 1 m'), await draw('plan "'), await draw('')]).toEqual(['', '', '']);
});
