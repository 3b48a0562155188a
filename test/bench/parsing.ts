/** Why declarations are parsed one by one: the way from a text to its Plan beside Langium's own, and what a slip costs the rest. */
import { type AstNode, AstUtils, URI } from 'langium';
import type * as Ast from '../../language/generated/ast.ts';
import { loneHost } from '../../language/src/plan/host.ts';
import { createPlanMemo, readPlan } from '../../language/src/plan/read.ts';
import { langium, parse } from '../../language/src/syntax/parser.ts';
import { ms, quantile, type Table, times } from './table.ts';
import { layersOf } from './texts.ts';

const LAYERS = 1000;
const ROUNDS = 9;
const SPOTS = 10;

async function median(work: (round: number) => unknown): Promise<number> {
  const taken: number[] = [];
  for (let round = -2; round < ROUNDS; round++) {
    const start = performance.now();
    await work(round);
    if (round >= 0) taken.push(performance.now() - start);
  }
  return quantile(taken, 0.5);
}

/** Parse, scopes, links and Langium's own checks, from the text as a whole. */
async function built(text: string, round: number): Promise<AstNode> {
  const { shared } = langium();
  const uri = URI.parse(`memory:///${round}.paintplan`);
  const document = shared.workspace.LangiumDocumentFactory.fromString(text, uri);
  await shared.workspace.DocumentBuilder.build([document], { validation: true });
  return document.parseResult.value;
}

export async function parsing(): Promise<Table> {
  const text = layersOf(LAYERS);
  const uri = 'file:///bench.paintplan';
  const typed = (round: number) => text.replace('film 8 ', `film ${9 + (round & 1)}${round + 3} `);
  const memo = createPlanMemo();
  const rows = [
    ['opened', await median(() => readPlan(text, uri)), await median((round) => built(text, round))],
    [
      'a figure typed',
      await median((round) => readPlan(typed(round), uri, loneHost, memo)),
      await median((round) => built(typed(round), round)),
    ],
  ] as const;
  return {
    title: `From a text of ${LAYERS} layers to what it says`,
    how: 'Median. Ours: cut, parse, names, figures. Langium’s document builder: parse, scopes, links, its own checks, before any name or figure is read.',
    head: ['', 'ours ÷ document builder', 'ours', 'document builder'],
    rows: rows.map(([what, ours, theirs]) => [what, times(ours / theirs), ms(ours), ms(theirs)]),
  };
}

/** Slips, each made at the layer that begins at an offset. */
const SLIPS: Readonly<Record<string, (text: string, at: number) => string>> = {
  'comment not closed': (text, at) => `${text.slice(0, at)}/* ${text.slice(at)}`,
  'brace not closed': (text, at) => text.slice(0, at) + text.slice(at).replace('}', ''),
  'quote not closed': (text, at) => `${text.slice(0, at)}note "dries\n${text.slice(at)}`,
  'word misspelt': (text, at) => text.slice(0, at) + text.slice(at).replace('glaze', 'glazz'),
};

/** Layers of a text with how much was read of each, by name. */
const here = (text: string) =>
  new Map(readPlan(text, 'file:///slip.paintplan').layers.map((l) => [l.name, l.fields.length]));
const whole = (text: string) =>
  new Map(
    AstUtils.streamContents(parse<Ast.Model>(text, 'Model')?.value as Ast.Model)
      .filter((node): node is Ast.Layer => node.$type === 'Layer')
      .map((l) => [l.called?.name ?? '', l.fields.length] as const),
  );

/** Per cent of the other layers that a slip leaves whole, mean of slips at evenly spread layers. */
function left(read: (text: string) => ReadonlyMap<string, number>, slip: (typeof SLIPS)[string]): number {
  const text = layersOf(LAYERS);
  const sound = read(text);
  const shares = Array.from({ length: SPOTS }, (_, i) => {
    const name = `g${Math.round(((i + 0.5) * LAYERS) / SPOTS)}`;
    const after = read(slip(text, text.indexOf(`glaze ${name} `)));
    const others = [...sound].filter(([other]) => other !== name);
    return others.filter(([other, fields]) => after.get(other) === fields).length / others.length;
  });
  return (100 * shares.reduce((sum, s) => sum + s, 0)) / SPOTS;
}

export function slips(): Table {
  return {
    title: 'What one slip leaves of the rest',
    how: `Layers still read whole, of the other ${LAYERS - 1}, mean over ${SPOTS} places of the slip: declarations parsed one by one, and the same grammar on the whole text with its recovery.`,
    head: ['', 'one by one', 'whole text'],
    rows: Object.entries(SLIPS).map(([what, slip]) => [
      what,
      `${left(here, slip).toFixed(1)} %`,
      `${left(whole, slip).toFixed(1)} %`,
    ]),
  };
}
