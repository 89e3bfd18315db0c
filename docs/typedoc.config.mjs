// Typed documentation of every public name, with the guides, as static pages. Formulas become MathML while the pages are
// built, so that reading them needs neither a network nor a script.
import { existsSync, readdirSync } from 'node:fs'
import temml from 'temml'

const topics = readdirSync(new URL('../src/', import.meta.url)).filter((folder) =>
  existsSync(new URL(`../src/${folder}/index.ts`, import.meta.url)),
)

/** @type {Partial<import('typedoc').TypeDocOptions>} */
export default {
  name: 'porewater',
  entryPoints: topics.map((topic) => `../src/${topic}/index.ts`),
  tsconfig: '../tsconfig.json',
  out: 'api',
  readme: '../README.md',
  projectDocuments: ['guides/*.md'],
  skipErrorChecking: true,
  disableGit: true,
  sourceLinkTemplate: 'src/{path}',
  disableSources: true,
  treatWarningsAsErrors: false,
  validation: { notExported: false, invalidLink: true, notDocumented: false },
  blockTags: ['@param', '@returns', '@throws', '@example', '@source', '@validity', '@procedure', '@typeParam', '@see'],
  hideGenerator: true,
  markdownItLoader(parser) {
    const fence = parser.renderer.rules.fence
    parser.renderer.rules.fence = (tokens, index, options, env, self) => {
      const token = tokens[index]
      if (token.info.trim() !== 'math') return fence(tokens, index, options, env, self)
      return `<p>${temml.renderToString(token.content.trim(), { displayMode: true, throwOnError: true })}</p>\n`
    }
  },
}
