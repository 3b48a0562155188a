/**
 * The grammar from its JSON. Langium's own loader brings its whole set of services along; a grammar asks for no more than its nodes linked by their paths.
 */
import {
  DefaultAstNodeLocator,
  DefaultJsonSerializer,
  DefaultNameProvider,
  type Grammar,
  type LangiumCoreServices,
} from 'langium';

export function loadGrammarFromJson(json: string): Grammar {
  const services = {
    shared: { workspace: {} },
    workspace: { AstNodeLocator: new DefaultAstNodeLocator() },
    references: { NameProvider: new DefaultNameProvider() },
    documentation: {},
  };
  // what it reads of the services is there; documents are for references from file to file
  return new DefaultJsonSerializer(services as unknown as LangiumCoreServices).deserialize<Grammar>(json);
}
