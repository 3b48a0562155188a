/** The Langium parser behind two plain functions. It is made once, and made anew should a parse ever break it. */
import {
  type AstNode,
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  EmptyFileSystem,
  inject,
  type LangiumCoreServices,
  type ParseResult,
} from 'langium';
import { PaintplanGeneratedModule, PaintplanGeneratedSharedModule } from '../../generated/module.ts';

function services(): LangiumCoreServices {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), PaintplanGeneratedSharedModule);
  const language = inject(createDefaultCoreModule({ shared }), PaintplanGeneratedModule);
  shared.ServiceRegistry.register(language);
  return language;
}

let made: LangiumCoreServices | undefined;

export const langium = (): LangiumCoreServices => {
  made ??= services();
  return made;
};

export type Rule = 'Model' | 'Declaration' | 'LayerField' | 'StudioField' | 'PigmentField' | 'SampleRow';

/** Parses a text from one rule. Undefined where the parser itself gave up; it is then made anew. */
export function parse<T extends AstNode>(text: string, rule: Rule): ParseResult<T> | undefined {
  try {
    return langium().parser.LangiumParser.parse<T>(text, { rule });
  } catch {
    made = undefined;
    return undefined;
  }
}
