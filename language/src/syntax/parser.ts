/** The Langium parser behind two plain functions. It is made once, and made anew should a parse ever break it. */
import {
  type AstNode,
  createLangiumParser,
  DefaultLexer,
  DefaultLexerErrorMessageProvider,
  DefaultTokenBuilder,
  DefaultValueConverter,
  inject,
  type LangiumCoreServices,
  LangiumParserErrorMessageProvider,
  type Module,
  type ParseResult,
} from 'langium';
import { PaintplanGeneratedModule, PaintplanGeneratedSharedModule } from '../../generated/module.ts';

/** Of Langium's services those that lexer and parser ask for: the others would only make the server larger. */
type Services = Pick<
  LangiumCoreServices,
  'Grammar' | 'LanguageMetaData' | 'parser' | 'references' | 'shared'
>;

const parsing: Module<Services> = {
  parser: {
    LangiumParser: (s: LangiumCoreServices) => createLangiumParser(s),
    ValueConverter: () => new DefaultValueConverter(),
    TokenBuilder: () => new DefaultTokenBuilder(),
    Lexer: (s: LangiumCoreServices) => new DefaultLexer(s),
    ParserErrorMessageProvider: () => new LangiumParserErrorMessageProvider(),
    LexerErrorMessageProvider: () => new DefaultLexerErrorMessageProvider(),
  },
  references: {},
  shared: () => inject(PaintplanGeneratedSharedModule as never, { profilers: {} } as never),
} as unknown as Module<Services>;

const services = (): Services =>
  inject(parsing as never, PaintplanGeneratedModule as never) as unknown as Services;

let made: Services | undefined;

export const langium = (): Services => {
  made ??= services();
  return made;
};

export type Rule = 'Model' | 'Declaration' | 'LayerField' | 'StudioField' | 'PigmentField' | 'SampleRow';

/**
 * Replaces each node's concrete syntax by its two offsets, the only thing asked of it: parsed declarations are kept
 * between keystrokes, and with their tokens they would take many times the memory and time.
 */
function keepPlaces(node: AstNode): void {
  const own = node as unknown as Record<string, unknown>;
  for (const key in own) {
    if (key[0] === '$') continue;
    const value = own[key];
    if (Array.isArray(value)) {
      for (const v of value) if (typeof v === 'object' && v !== null) keepPlaces(v as AstNode);
    } else if (typeof value === 'object' && value !== null) keepPlaces(value as AstNode);
  }
  const cst = node.$cstNode;
  if (cst) own.$cstNode = { offset: cst.offset, end: cst.end };
}

/** Parses a text from one rule. Undefined where the parser itself gave up; it is then made anew. */
export function parse<T extends AstNode>(text: string, rule: Rule): ParseResult<T> | undefined {
  try {
    const result = langium().parser.LangiumParser.parse<T>(text, { rule });
    keepPlaces(result.value);
    return result;
  } catch {
    made = undefined;
    return undefined;
  }
}

/** A token of a text, a comment or one the parser would see; `type` is a terminal of the grammar or a keyword. */
export interface Token {
  readonly type: string;
  readonly text: string;
  readonly at: number;
}

/** Every token of a text in its order, comments included; what the lexer cannot take is left out. */
export function lex(text: string): Token[] {
  const { tokens, hidden } = langium().parser.Lexer.tokenize(text);
  return [...tokens, ...hidden]
    .map((t) => ({ type: t.tokenType.name, text: t.image, at: t.startOffset }))
    .sort((a, b) => a.at - b.at);
}
