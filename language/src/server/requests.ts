/** Which feature answers which request. A request on a document that is not open gets an empty answer, never an error. */
import {
  type CodeLens,
  type ColorInformation,
  type CompletionItem,
  CompletionItemKind,
  type Connection,
  type DocumentSymbol,
  type InlayHint,
  InlayHintKind,
  type InlayHintParams,
  InsertTextFormat,
  type Location,
  MarkupKind,
  type Position,
  ResponseError,
  type SelectionRange,
  SemanticTokensBuilder,
  SymbolKind,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { rewrites } from '../features/actions.ts';
import { colourBoxes, presentations } from '../features/colours.ts';
import { completion, type Item, type ItemKind, itemDocumentation } from '../features/completion.ts';
import { hints } from '../features/hints.ts';
import { hover } from '../features/hover.ts';
import { lenses } from '../features/lenses.ts';
import { definition, nameAt, references } from '../features/names.ts';
import { folds, selection } from '../features/structure.ts';
import { type Symbol as PlanSymbol, symbols } from '../features/symbols.ts';
import { semanticTokens } from '../features/tokens.ts';
import type { Place } from '../plan/plan.ts';
import { miniStrip } from '../report/strips.ts';
import { formatEdits } from '../syntax/format.ts';
import { nameFault } from '../syntax/name-fault.ts';
import { editOf, quickFix, rangeOf } from './convert.ts';
import type { Documents, Open } from './documents.ts';
import type { Publisher } from './publish.ts';
import type { Settings } from './settings.ts';

const ITEM_KIND: Record<ItemKind, CompletionItemKind> = {
  word: CompletionItemKind.Keyword,
  field: CompletionItemKind.Field,
  paint: CompletionItemKind.Variable,
  mix: CompletionItemKind.Function,
  medium: CompletionItemKind.Property,
  pigment: CompletionItemKind.EnumMember,
  material: CompletionItemKind.Constant,
  area: CompletionItemKind.Module,
  layer: CompletionItemKind.Class,
  rule: CompletionItemKind.Reference,
  value: CompletionItemKind.Value,
};

const SYMBOL_KIND: Record<PlanSymbol['kind'], SymbolKind> = {
  pigment: SymbolKind.EnumMember,
  paint: SymbolKind.Variable,
  medium: SymbolKind.Property,
  mix: SymbolKind.Function,
  area: SymbolKind.Namespace,
  group: SymbolKind.Namespace,
  layer: SymbolKind.Class,
  sample: SymbolKind.Struct,
  'area-heading': SymbolKind.Namespace,
};

/** Base 64 of a text's UTF-8, in Node and in a browser's worker alike. */
const base64 = (text: string): string => btoa(String.fromCharCode(...new TextEncoder().encode(text)));

export function answerRequests(
  connection: Connection,
  documents: Documents,
  openUris: () => readonly string[],
  closedUris: () => readonly string[],
  publish: Publisher,
  settings: () => Settings,
): void {
  /** Answers for an open document; a request on any other gets `otherwise`. */
  const on =
    <P extends { textDocument: { uri: string } }, R>(otherwise: R, answer: (open: Open, params: P) => R) =>
    (params: P): R => {
      const open = documents.at(params.textDocument.uri, (params as { position?: Position }).position);
      return open ? answer(open, params) : otherwise;
    };
  const offset = (open: Open, p: Position) => open.lines.offset(p.line, p.character);
  const location = (open: Open, place: Place): Location => ({
    uri: place.uri,
    range: rangeOf(place, open.linesOf(place.uri)),
  });
  const stretch = (open: Open, start: number, end: number) =>
    rangeOf({ uri: open.uri, start, end }, open.lines);

  connection.onHover(
    on(null, (open, { position }) => {
      const { plan, study } = open.analysis;
      const card = hover(plan, study, offset(open, position));
      // drawn here and not in the feature, which knows words only
      const strip = card?.layer && miniStrip(study, card.layer.area, card.layer.index);
      const picture = strip
        ? `\n\n![build-up on ${card.layer?.area}](data:image/svg+xml;base64,${base64(strip.markup)})`
        : '';
      return card
        ? {
            contents: { kind: MarkupKind.Markdown, value: card.markdown + picture },
            range: rangeOf(card.place, open.lines),
          }
        : null;
    }),
  );

  connection.onCompletion(
    on([] as CompletionItem[], (open, { position }) => {
      const { items, place } = completion(open.analysis.plan, open.text, offset(open, position));
      const range = rangeOf(place, open.lines);
      return items.map(
        (item: Item): CompletionItem => ({
          label: item.label,
          kind: ITEM_KIND[item.kind],
          detail: item.detail,
          sortText: `${String(item.rank).padStart(3, '0')}${item.label}`,
          textEdit: { range, newText: item.insert ?? item.label },
          ...(item.snippet ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
          data: item.kind,
        }),
      );
    }),
  );
  connection.onCompletionResolve((item) => {
    const words =
      typeof item.data === 'string' ? itemDocumentation(item.data as ItemKind, item.label) : undefined;
    return words ? { ...item, documentation: { kind: MarkupKind.Markdown, value: words } } : item;
  });

  connection.onCodeAction(
    on([], (open, { range, context }) => {
      const [start, end] = [offset(open, range.start), offset(open, range.end)];
      const wants = (kind: string) =>
        context.only === undefined || context.only.some((k) => kind === k || kind.startsWith(`${k}.`));
      const diagnostics = publish.diagnostics(open);
      publish.tryFixes();
      const fixes = wants('quickfix')
        ? publish
            .findings(open)
            .flatMap((f, i) =>
              f.place.start <= end && start <= f.place.end
                ? f.fixes.map((fix) =>
                    quickFix(fix, diagnostics[i] as (typeof diagnostics)[number], open.linesOf),
                  )
                : [],
            )
        : [];
      const others = rewrites(open.analysis.plan, open.analysis.study, open.text, start)
        .filter((r) => wants(r.kind))
        .map((r) => ({ title: r.fix.title, kind: r.kind, edit: editOf(r.fix, open.linesOf) }));
      return [...fixes, ...others];
    }),
  );

  connection.onDefinition(
    on(null as Location | null, (open, { position }) => {
      const declared = definition(open.analysis.plan, offset(open, position));
      return declared ? location(open, declared) : null;
    }),
  );

  /** Where a declaration is used: in the open plans, and in those that lie below the opened folders. */
  const usesOf = (
    open: Open,
    target: Place,
    withDeclaration: boolean,
  ): { readonly open: Open; readonly place: Place }[] => {
    const plans = [
      ...[...new Set([open.uri, ...openUris()])].map((uri) => documents.get(uri)),
      ...closedUris().map((uri) => documents.closed(uri)),
    ];
    const uses = plans.flatMap((plan) =>
      plan
        ? references(plan.analysis.plan, target, withDeclaration).map((place) => ({ open: plan, place }))
        : [],
    );
    const declared = uses.some((u) => u.place.uri === target.uri && u.place.start === target.start);
    return withDeclaration && !declared ? [{ open, place: target }, ...uses] : uses;
  };

  connection.onReferences(
    on([] as Location[], (open, { position, context }) => {
      const name = nameAt(open.analysis.plan, offset(open, position));
      if (!name) return [];
      return usesOf(open, name.target, context.includeDeclaration).map((u) => location(u.open, u.place));
    }),
  );
  connection.onDocumentHighlight(
    on([], (open, { position }) => {
      const name = nameAt(open.analysis.plan, offset(open, position));
      return name
        ? references(open.analysis.plan, name.target, true).map((p) => ({ range: rangeOf(p, open.lines) }))
        : [];
    }),
  );
  connection.onPrepareRename(
    on(null, (open, { position }) => {
      const name = nameAt(open.analysis.plan, offset(open, position));
      return name ? { range: rangeOf(name.place, open.lines), placeholder: name.name } : null;
    }),
  );
  connection.onRenameRequest((params): WorkspaceEdit | null => {
    const open = documents.get(params.textDocument.uri);
    const name = open && nameAt(open.analysis.plan, offset(open, params.position));
    if (!open || !name) return null;
    const fault = nameFault(params.newName, name.inFormulas);
    if (fault) throw new ResponseError(-32602, fault);
    const changes: Record<string, TextEdit[]> = {};
    const put = (of: Open, place: Place) => {
      changes[place.uri] ??= [];
      changes[place.uri]?.push({ range: rangeOf(place, of.linesOf(place.uri)), newText: params.newName });
    };
    for (const u of usesOf(open, name.target, true)) put(u.open, u.place);
    return { changes };
  });

  connection.onDocumentSymbol(
    on([] as DocumentSymbol[], (open) => {
      const made = (s: PlanSymbol): DocumentSymbol => ({
        name: s.name,
        detail: s.detail,
        kind: SYMBOL_KIND[s.kind],
        range: rangeOf(s.place, open.lines),
        selectionRange: rangeOf(s.namePlace, open.lines),
        children: s.children.map(made),
      });
      return symbols(open.analysis.plan).map(made);
    }),
  );
  connection.onWorkspaceSymbol(({ query }) => {
    const plain = query.toLowerCase();
    const flat = (list: readonly PlanSymbol[]): PlanSymbol[] => list.flatMap((s) => [s, ...flat(s.children)]);
    return openUris().flatMap((uri) => {
      const open = documents.get(uri);
      if (!open) return [];
      return flat(symbols(open.analysis.plan))
        .filter((s) => s.name.toLowerCase().includes(plain))
        .map((s) => ({
          name: s.name,
          kind: SYMBOL_KIND[s.kind],
          location: location(open, s.namePlace),
          containerName: open.analysis.plan.title,
        }));
    });
  });

  connection.onFoldingRanges(
    on([], (open) =>
      folds(open.text).flatMap((f) => {
        const [start, end] = [open.lines.at(f.start).line, open.lines.at(f.end).line];
        return end > start ? [{ startLine: start, endLine: end }] : [];
      }),
    ),
  );
  connection.onSelectionRanges(
    on([] as SelectionRange[], (open, { positions }) =>
      positions.map((p) => {
        const stretches = selection(open.text, offset(open, p)).map((s) => stretch(open, s.start, s.end));
        return (
          stretches.reduceRight<SelectionRange | undefined>(
            (parent, range) => ({ range, parent }),
            undefined,
          ) ?? { range: { start: p, end: p } }
        );
      }),
    ),
  );
  connection.onDocumentLinks(
    on([], (open) =>
      open.analysis.plan.uses.flatMap((u) =>
        u.status === 'read' && u.uri ? [{ range: rangeOf(u.pathPlace, open.lines), target: u.uri }] : [],
      ),
    ),
  );

  connection.onDocumentFormatting(
    on([], (open) =>
      formatEdits(open.text).map((e) => ({ range: stretch(open, e.start, e.end), newText: e.text })),
    ),
  );
  connection.onDocumentRangeFormatting(
    on([], (open, { range }) =>
      formatEdits(open.text, { start: offset(open, range.start), end: offset(open, range.end) }).map((e) => ({
        range: stretch(open, e.start, e.end),
        newText: e.text,
      })),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    on([], (open, { position }) => {
      // only the declaration that the closing brace ends; the text after it stays as it is
      const at = offset(open, position);
      return formatEdits(open.text, { start: at - 1, end: at - 1 })
        .filter((e) => e.end <= at && e.text.trim() !== '')
        .map((e) => ({ range: stretch(open, e.start, e.end), newText: e.text }));
    }),
  );

  /** Answers once the keyboard rests: colours are never computed between two keystrokes. */
  const rested =
    <P extends { textDocument: { uri: string } }, R>(otherwise: R, answer: (open: Open, params: P) => R) =>
    async (params: P): Promise<R> => {
      await publish.rested(params.textDocument.uri);
      return on(otherwise, answer)(params);
    };

  connection.onDocumentColor(
    rested([] as ColorInformation[], (open) =>
      colourBoxes(open.analysis.plan, open.analysis.study)
        .filter((b) => b.written || settings().predictedColours)
        .map((b) => ({
          range: rangeOf(b.place, open.lines),
          color: { red: b.rgb[0], green: b.rgb[1], blue: b.rgb[2], alpha: 1 },
        })),
    ),
  );
  connection.onColorPresentation(
    on([], (open, { color, range }) => {
      const text = open.text.slice(offset(open, range.start), offset(open, range.end));
      // a predicted colour is what the paints give: whatever is picked, the text stays
      if (!/^#|\(/.test(text)) return [{ label: text, textEdit: { range, newText: text } }];
      return presentations([color.red, color.green, color.blue]).map((label) => ({
        label,
        textEdit: { range, newText: label },
      }));
    }),
  );

  connection.languages.inlayHint.on(
    rested([] as InlayHint[], (open, { range }: InlayHintParams) => {
      const [start, end] = [offset(open, range.start), offset(open, range.end)];
      return hints(open.analysis.plan, open.analysis.study, true)
        .filter((h) => h.offset >= start && h.offset <= end && settings().hints[h.kind])
        .map((h) => {
          const at = open.lines.at(h.offset);
          return {
            position: { line: at.line, character: at.column },
            label: h.text,
            tooltip: h.tooltip,
            kind: InlayHintKind.Parameter,
            paddingLeft: true,
          };
        });
    }),
  );
  connection.onCodeLens(
    on([] as CodeLens[], (open) =>
      settings().lenses
        ? lenses(open.analysis.plan, open.analysis.study).map((l) => ({
            range: rangeOf(l.place, open.lines),
            command: { title: l.text, command: '' },
          }))
        : [],
    ),
  );
  connection.languages.semanticTokens.on(
    on({ data: [] as number[] }, (open) => {
      const builder = new SemanticTokensBuilder();
      for (const t of semanticTokens(open.analysis.plan)) {
        const at = open.lines.at(t.start);
        builder.push(at.line, at.column, t.length, t.type, t.declaration ? 1 : 0);
      }
      return builder.build();
    }),
  );
}
