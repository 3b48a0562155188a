/** Layers: their fields, and where a new field would go. */
import type { LayerField, Layer as LayerNode } from '../../generated/ast.ts';
import type { Parsed, Piece } from '../syntax/chunk.ts';
import { layerFields } from '../syntax/fields.ts';
import type { Areas } from './areas.ts';
import { at, nameUse, placeOf, wordPlace } from './context.ts';
import { fieldInto, fieldUse } from './fill.ts';
import type { FieldUse, Layer, LayerKind, Place } from './plan.ts';
import type { Reader } from './scope.ts';
import { unsaid } from './unsaid.ts';

type Draft = { -readonly [K in keyof Layer]: Layer[K] };

export interface LayerText {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly open?: number;
  readonly openMissing?: boolean;
  readonly close?: number;
  readonly description?: string;
}

/** Where a new field goes: after the last one, on a line of its own where the block has lines. */
export function insertField(chunk: LayerText, lastFieldEnd: number, uri: string): Layer['insertField'] {
  if (chunk.open === undefined || chunk.openMissing || chunk.close === undefined) return undefined;
  const { text } = chunk;
  // a comment at the end of the last field's line stays with that field
  const comment =
    /^[ \t]*(?:\/\/[^\r\n]*|\/\*[^\r\n]*?\*\/)/.exec(text.slice(lastFieldEnd - chunk.start))?.[0] ?? '';
  const at = lastFieldEnd + comment.trimEnd().length;
  const inside = text.slice(chunk.open + 1 - chunk.start, chunk.close - chunk.start);
  const place: Place = { uri, start: at, end: at };
  const line = /(\r\n|\n|\r)([ \t]*)\S/.exec(inside);
  const break_ = /(\r\n|\n|\r)/.exec(inside);
  if (line) return { place, before: `${line[1]}${line[2]}`, after: '' };
  if (break_) return { place, before: `${break_[1]}  `, after: '' };
  return inside.trim() === ''
    ? { place, before: ' ', after: inside === '' ? ' ' : '' }
    : { place, before: '   ', after: '' };
}

export function readLayer(
  reader: Reader,
  areas: Areas,
  parsed: Parsed,
  chunk: LayerText,
  index: number,
  record: boolean,
): Layer | undefined {
  const head = parsed.declaration as Piece<LayerNode> | undefined;
  if (!head?.node.word) return undefined;
  const headAt = at(reader.context.uri, chunk.start + head.base);
  const name = nameUse(head.node.called, headAt);
  const kindPlace = wordPlace(head.node, headAt);
  const fields: FieldUse[] = [];
  const draft: Draft = {
    ...unsaid(),
    kind: head.node.word as LayerKind,
    // a layer half-typed is called by its kind until it has a name
    name: name?.name ?? (head.node.word as string),
    index,
    place: { uri: reader.context.uri, start: chunk.start, end: chunk.end },
    namePlace: name?.place ?? { ...kindPlace, start: kindPlace.end },
    kindPlace,
    description: chunk.description,
    everywhere: false,
    fields,
  };
  let last = (chunk.open ?? chunk.start) + 1;
  for (const { node, base } of parsed.fields as readonly Piece<LayerField>[]) {
    if (!node.word) continue;
    const here = at(reader.context.uri, chunk.start + base, index);
    const from = { reader, areas, record, here };
    fields.push(fieldUse(node, from, layerFields));
    fieldInto(draft, node, from, layerFields);
    last = Math.max(last, placeOf(node, here).end);
  }
  const { on, except, areas: meant } = draft.extent ?? { on: [], except: [], areas: areas.all };
  draft.on = on;
  draft.except = except;
  draft.areas = meant;
  draft.everywhere = draft.extent === undefined;
  draft.insertField = insertField(chunk, last, reader.context.uri);
  return draft;
}
