/** A problem of the text, and where a parse stopped. */
export interface SyntaxProblem {
  readonly message: string;
  /** relative to the chunk */
  readonly start: number;
  readonly end: number;
  readonly fixes?: readonly {
    readonly title: string;
    readonly start: number;
    readonly end: number;
    readonly text: string;
  }[];
}

/** Where a parse stopped: the token it could not take (empty at the end), and the end of the one before. */
export interface Stop {
  readonly token: string;
  readonly start: number;
  readonly end: number;
  readonly before: string;
  readonly beforeEnd: number;
  /** a character outside the language */
  readonly unreadable?: boolean;
}
