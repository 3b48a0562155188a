/**
 * The library's door to a disk, for Node: texts out of files, and how `use` reaches other files. What is made of the
 * texts is the other door's (`paintplan`), which knows no file system and runs in a browser too.
 */
export type { PlanHost } from '../plan/host.ts';
export type { Elsewhere } from '../report/checked.ts';
export { elsewhere, hostFor } from './host.ts';
export { type Input, readInputs } from './input.ts';
export { CannotRun } from './say.ts';
