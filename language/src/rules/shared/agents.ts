/** What a preparation leaves on the surface. */
import type { Source, Statement } from '../../materials/types.ts';
import type { Preparation } from '../../plan/plan.ts';
import { liquidsOf } from '../../studio/recipe.ts';

export interface Left {
  readonly verdict: 'residue' | 'film' | 'attack';
  readonly why: string;
  readonly source: Source;
}

const practice = (text: string): Source => ({
  text: `common practice: ${text}`,
  mark: 'common practice',
});

const CASTOR: Left = {
  verdict: 'residue',
  why: 'Castor oil never dries: what stays keeps the next layer from sticking.',
  source: practice('castor oil is a plasticiser, not a painting oil'),
};
const WAX: Left = {
  verdict: 'film',
  why: 'Wax between layers keeps the next one from gripping and stays soluble.',
  source: practice('no wax between layers'),
};
const RESIN: Left = {
  verdict: 'film',
  why: 'A resin film between layers stays soluble: a later cleaning takes off what lies on it.',
  source: practice('no varnish between layers'),
};
const AMMONIA: Left = {
  verdict: 'attack',
  why: 'Alkali attacks an oil film and copper colours.',
  source: practice('ammonia takes paint off'),
};
const METHANOL: Left = {
  verdict: 'attack',
  why: 'Methanol softens young oil paint, and is poison by skin and breath.',
  source: practice('other alcohols do the same work'),
};

const VERDICT = { 'leaves-residue': 'residue', 'leaves-film': 'film', 'attacks-film': 'attack' } as const;

const told = (why: Statement, verdict: Left['verdict']): Left => ({
  verdict,
  why: why.value,
  source: why.source,
});

/** What an agent does to the layers, where it does harm. A medium is as unsound as what is in it. */
export function leftBy({ agent }: Preparation): Left | undefined {
  const is = agent?.is;
  if (!is) return undefined;
  if (is.kind === 'agent') {
    const { verdict, why } = is.agent;
    return verdict === 'sound' ? undefined : told(why, VERDICT[verdict]);
  }
  if (is.kind === 'binder') {
    const { id, kind } = is.binder;
    if (id === 'castor') return CASTOR;
    if (kind === 'wax') return WAX;
    // a resin laid by itself is a varnish; in an oil medium it is a part of the paint
    return kind === 'resin' && id !== 'megilp' ? RESIN : undefined;
  }
  for (const { liquid } of liquidsOf(is) ?? []) {
    if (liquid.kind === 'solvent' && liquid.solvent.id === 'ammonia') return AMMONIA;
    if (liquid.kind === 'solvent' && liquid.solvent.id === 'methanol') return METHANOL;
    if (liquid.kind === 'binder' && liquid.binder.id === 'castor') return CASTOR;
    if (liquid.kind === 'binder' && liquid.binder.kind === 'wax') return WAX;
  }
  return undefined;
}
