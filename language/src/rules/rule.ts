/** What a rule is. One file a rule; everything a user reads about it comes from that file. */
import type { Source } from '../materials/types.ts';
import type { Fix, Place, Plan, Severity } from '../plan/plan.ts';
import type { LayerStudy, Study } from '../results/study.ts';
import type { Alternative, Objection } from './shared/instead.ts';
import type { Theme } from './themes.ts';

/**
 * Figures a rule may compute with: of what a film is made and how thick it is, how long it waits, the studio's climate and
 * its air, the size of the picture, how near a colour is to come. `films beneath` adds every film below the layer spoken of,
 * as a colour does.
 */
export type Figure = 'film' | 'films beneath' | 'time' | 'climate' | 'air' | 'surface' | 'tolerance';

/** What one rule says of one place, with what can be done about it. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly related: readonly { readonly message: string; readonly place: Place }[];
  /** made when first looked at: a fix may have to try a layer otherwise */
  readonly fixes: readonly Fix[];
  /** pigments to take instead of the one objected to, the nearest first; searched for when first looked at */
  readonly instead?: readonly Alternative[];
  /** index of the layer this finding is about, so that the layer's `allow` can silence it */
  readonly layer?: number;
  /** shown faded (unused declarations) */
  readonly unnecessary?: boolean;
}

/** A finding as a rule reports it: severity defaults to the rule's own. */
export interface RuleReport {
  readonly message: string;
  readonly place: Place;
  readonly severity?: Severity;
  readonly related?: readonly { readonly message: string; readonly place: Place }[];
  /** a function where finding them takes work: it is called when someone asks for fixes, never while checking */
  readonly fixes?: readonly Fix[] | (() => readonly Fix[]);
  /** a pigment it objects to, and which it would not */
  readonly objection?: Objection;
  readonly layer?: number;
  readonly unnecessary?: boolean;
}

/** What a file says outside its layers. */
export type Outside = Pick<
  Plan,
  'kind' | 'studio' | 'support' | 'start' | 'made' | 'areas' | 'implicitArea' | 'visible'
>;

/** One rule: its words, what it rests on, where it speaks, and its check. */
export interface Rule {
  readonly id: string;
  /** five words or so, no full stop */
  readonly title: string;
  /** the folder it lies in */
  readonly theme: Theme;
  readonly severity: Severity;
  /** two sentences a painter understands */
  readonly why: string;
  readonly whatToDo: string;
  readonly sources: readonly Source[];
  /** what it computes with: it is silent where another rule has just called such a figure impossible */
  readonly restsOn: readonly Figure[];
  /** its findings call a figure impossible: what rests on that figure waits until it is mended */
  readonly judgesFigures?: true;
  /** the files it speaks on; records take no craft advice. A palette is a file of paints and mediums only. */
  readonly appliesTo: readonly ('plan' | 'record' | 'palette')[];
  /** needs predicted colours: run after the cheap ones, off the typing path */
  readonly needsColour?: boolean;
  /** Findings, in any order. Must not throw on any plan, however broken; `study` has only what could be computed. */
  check?(plan: Plan, study: Study): Iterable<RuleReport>;
  /**
   * Findings about one layer, for rules that need no colour. `others` leads to all the rest; a rule that is silent
   * without it is not asked of this layer again before the layer or what stands outside the layers changes.
   */
  checkLayer?(layer: LayerStudy, others: () => Study, outside: Outside): Iterable<RuleReport>;
}
