/** The open documents with what was computed of them, each computed once a version. */
import type { Position, TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { type Analyser, type Analysis, createAnalyser } from '../analyse.ts';
import { fencedPlans } from '../features/markdown.ts';
import type { PlanHost } from '../plan/host.ts';
import { type Lines, linesOf } from '../plan/lines.ts';
import type { LinesOf } from './convert.ts';

export interface Open {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  readonly analysis: Analysis;
  readonly lines: Lines;
  readonly linesOf: LinesOf;
}

interface Remembered {
  readonly analyse: Analyser;
  readonly generation: number;
  readonly open: Open;
}

export interface Documents {
  /** Undefined for a document that is not (or no longer) open, and for a Markdown note, which is several plans. */
  get(uri: string): Open | undefined;
  /** The plan itself, or every plan fenced in a note. */
  all(uri: string): readonly Open[];
  /** The plan at a place: the document itself, or the block of a note that holds the position. */
  at(uri: string, position: Position | undefined): Open | undefined;
  /** A plan that is not open, read from the disk for this once. */
  closed(uri: string): Open | undefined;
  /** Forgets results that other files had a part in; the next `get` computes them anew. */
  othersChanged(): void;
  forget(uri: string): void;
}

export function analysedDocuments(documents: TextDocuments<TextDocument>, disk: () => PlanHost): Documents {
  const remembered = new Map<string, Remembered>();
  let generation = 0;

  // an open file counts as the editor shows it, not as it was last saved
  const host = (): PlanHost => {
    const onDisk = disk();
    return {
      resolve: (path, from) => onDisk.resolve(path, from),
      read(uri) {
        const open = documents.get(uri);
        return open ? { text: open.getText() } : onDisk.read(uri);
      },
    };
  };

  const opened = (uri: string, version: number, text: string, analyse: Analyser): Open => {
    const files = host();
    const lines = linesOf(text);
    const others = new Map<string, Lines>();
    return {
      uri,
      version,
      text,
      analysis: analyse(text, uri, files),
      lines,
      linesOf(other) {
        if (other === uri) return lines;
        let there = others.get(other);
        if (!there) {
          const read = files.read(other);
          there = linesOf('text' in read ? read.text : '');
          others.set(other, there);
        }
        return there;
      },
    };
  };

  const isNote = (document: TextDocument) => document.languageId === 'markdown';

  /** What is remembered under a key, computed anew where the version or another file has changed. */
  const current = (key: string, document: TextDocument, text: () => string): Open => {
    const known = remembered.get(key);
    if (known && known.open.version === document.version && known.generation === generation)
      return known.open;
    const analyse = known?.analyse ?? createAnalyser();
    const open = opened(document.uri, document.version, text(), analyse);
    remembered.set(key, { analyse, generation, open });
    return open;
  };

  const blocksOf = (document: TextDocument) =>
    fencedPlans(document.getText()).map((f, i) => ({
      start: f.start,
      end: f.end,
      open: current(`${document.uri}#${i}`, document, () => f.text),
    }));

  return {
    get(uri) {
      const document = documents.get(uri);
      return document && !isNote(document) ? current(uri, document, () => document.getText()) : undefined;
    },
    all(uri) {
      const document = documents.get(uri);
      if (!document) return [];
      return isNote(document)
        ? blocksOf(document).map((b) => b.open)
        : [current(uri, document, () => document.getText())];
    },
    at(uri, position) {
      const document = documents.get(uri);
      if (!document) return undefined;
      if (!isNote(document)) return current(uri, document, () => document.getText());
      if (!position) return undefined;
      const offset = document.offsetAt(position);
      return blocksOf(document).find((b) => b.start <= offset && offset <= b.end)?.open;
    },
    closed(uri) {
      const read = host().read(uri);
      return 'text' in read ? opened(uri, 0, read.text, createAnalyser()) : undefined;
    },
    othersChanged() {
      generation++;
    },
    forget(uri) {
      for (const key of remembered.keys())
        if (key === uri || key.startsWith(`${uri}#`)) remembered.delete(key);
    },
  };
}
