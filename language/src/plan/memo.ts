/** What reading a text again can use of the last reading. */
import type { Pigment } from '../materials/types.ts';
import { createMemo, type Memo } from '../memory/memo.ts';
import type { Parsed } from '../syntax/chunk.ts';
import type { Areas } from './areas.ts';
import type {
  Area,
  Group,
  Layer,
  Medium,
  Mix,
  NamedPlace,
  OwnPigment,
  Paint,
  Plan,
  Problem,
  Use,
} from './plan.ts';
import type { Scope } from './scope.ts';
import type { Cut, Statement } from './statement.ts';
import type { Surroundings } from './surroundings.ts';

/** What the declarations of a file outside its layers come to, and what reading them left behind. */
export interface Outside {
  /** none is moved or changed as long as these are the same objects */
  readonly statements: readonly Statement[];
  readonly uses: readonly Use[];
  readonly scope: Scope;
  readonly pigments: readonly OwnPigment[];
  readonly paints: readonly Paint[];
  readonly mediums: readonly Medium[];
  readonly mixes: readonly Mix[];
  readonly circles: Plan['circles'];
  readonly areas: readonly Area[];
  readonly groups: readonly Group[];
  readonly implicit: boolean;
  readonly where: Areas;
  readonly clashes: Plan['clashes'];
  readonly problems: readonly Problem[];
  readonly names: readonly NamedPlace[];
  readonly guesses: number;
}

/** A layer as it was read without any problem, and the names in it. */
export interface ReadLayer {
  readonly statement: Statement;
  readonly layer: Layer;
  readonly names: readonly NamedPlace[];
  /** how many guesses were left before it */
  readonly guesses: number;
}

/** One reading of a file. */
export interface Remembered {
  /** missing where the text was not read to its end */
  readonly cut?: Cut;
  readonly surroundings: Surroundings;
  readonly outside: Outside;
  /** by index */
  readonly layers: readonly (ReadLayer | undefined)[];
  readonly plan: Plan;
}

/** What was made for the last text, and what has been made since. */
export interface PlanMemo {
  readonly parsed: Memo<Parsed>;
  /** the painter's own pigments: as long as nothing about one changes it stays the same object, as the catalogue's do */
  readonly pigments: Memo<Pigment>;
  /** used files read for the present text */
  used: Map<string, Plan>;
  /** the last reading of each file */
  readonly files: Map<string, Remembered>;
}

/** A memory of its own that knows what another knows now. */
export const forkPlanMemo = ({ parsed, pigments, used, files }: PlanMemo): PlanMemo => ({
  parsed: parsed.fork(),
  pigments: pigments.fork(),
  used: new Map(used),
  files: new Map(files),
});

export const createPlanMemo = (): PlanMemo => ({
  parsed: createMemo(),
  pigments: createMemo(),
  used: new Map(),
  files: new Map(),
});
