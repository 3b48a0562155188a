/** Which figures this copy carries: the number of the data, apart from the number of the tool. */
import record from './tables/version.json' with { type: 'json' };

/** The number of the shipped figures, with day, licences, changes and the hashes it stands for. */
export interface DataRecord {
  /** year and month of the figures, and a count where one month has several: `2026.11`, `2026.11.1` */
  readonly version: string;
  /** day of the number, ISO */
  readonly date: string;
  /** licence of the tables as they are shipped, and the open data sets they are derived from */
  readonly licence: string;
  readonly attributions: readonly {
    readonly what: string;
    readonly licence: string;
    readonly from: string;
  }[];
  /** what changed with each number, newest first */
  readonly changes: readonly { readonly version: string; readonly date: string; readonly what: string }[];
  /** hash of the figures of every table, by its path below `src` */
  readonly tables: Readonly<Record<string, string>>;
}

/** Number, date, licences and changes of the shipped figures. `node language/build/data-version.ts` writes it. */
export const dataRecord: DataRecord = record;

/** Number of the shipped figures; every result and report names it. */
export const dataVersion: string = record.version;
