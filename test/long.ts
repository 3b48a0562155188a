/** How much a property is tried: a sample in `npm test`, the whole in `npm run test:long`, as before a release. */
export const long = process.env.PAINTPLAN_TEST_LONG !== undefined;

export const tries = (sample: number, whole: number): number => (long ? whole : sample);
