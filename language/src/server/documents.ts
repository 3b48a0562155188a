/** The open documents with what was computed of them, each computed once a version. */
import type { TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { type Analyser, type Analysis, createAnalyser } from '../analyse.ts';
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
  /** Undefined for a document that is not (or no longer) open. */
  get(uri: string): Open | undefined;
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

  return {
    get(uri) {
      const document = documents.get(uri);
      if (!document) return undefined;
      const known = remembered.get(uri);
      if (known && known.open.version === document.version && known.generation === generation)
        return known.open;
      const analyse = known?.analyse ?? createAnalyser();
      const text = document.getText();
      const files = host();
      const analysis = analyse(text, uri, files);
      const lines = linesOf(text);
      const others = new Map<string, Lines>();
      const open: Open = {
        uri,
        version: document.version,
        text,
        analysis,
        lines,
        linesOf(other) {
          if (other === uri) return lines;
          let found = others.get(other);
          if (!found) {
            const read = files.read(other);
            found = linesOf('text' in read ? read.text : '');
            others.set(other, found);
          }
          return found;
        },
      };
      remembered.set(uri, { analyse, generation, open });
      return open;
    },
    othersChanged() {
      generation++;
    },
    forget(uri) {
      remembered.delete(uri);
    },
  };
}
