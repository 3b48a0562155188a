/** Mixes and mediums that contain themselves. */
import type { Medium, Mix, Plan } from './plan.ts';

type Named = Mix | Medium;

const within = (thing: Named): readonly Named[] =>
  thing.formula?.parts.flatMap(({ ingredient: { is } }): Named[] =>
    is.kind === 'mix' ? [is.mix] : is.kind === 'medium' ? [is.medium] : [],
  ) ?? [];

/** Each circle once, as the names along it. Linear in names and parts; no recursion, so that no chain is too long. */
export function circles(all: readonly Named[]): Plan['circles'] {
  const done = new Set<Named>();
  const circles: Plan['circles'][number][] = [];
  for (const start of all) {
    if (done.has(start)) continue;
    const path: Named[] = [];
    const onPath = new Set<Named>();
    const stack: { readonly thing: Named; readonly left: Named[] }[] = [];
    const enter = (thing: Named) => {
      path.push(thing);
      onPath.add(thing);
      stack.push({ thing, left: [...within(thing)] });
    };
    enter(start);
    while (stack.length > 0) {
      const top = stack[stack.length - 1] as (typeof stack)[number];
      const next = top.left.pop();
      if (!next) {
        stack.pop();
        path.pop();
        onPath.delete(top.thing);
        done.add(top.thing);
      } else if (onPath.has(next)) {
        const names = path.slice(path.indexOf(next)).map((t) => t.name);
        circles.push({ names: [...names, next.name], place: next.namePlace });
      } else if (!done.has(next)) enter(next);
    }
  }
  return circles;
}
