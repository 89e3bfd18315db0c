// Typed documentation of every public name, with the guides, as static pages. Formulas become MathML while the pages are
// built, so that reading them needs neither a network nor a script.
import { existsSync, readdirSync } from 'node:fs'
import temml from 'temml'
import { Converter } from 'typedoc'
import { sourceInFull } from '../src/catalogue/source-in-full.ts'

const topics = readdirSync(new URL('../src/', import.meta.url)).filter((folder) =>
  existsSync(new URL(`../src/${folder}/index.ts`, import.meta.url)),
)

/** Sources cite works by keys; a page shows the citation. @param {import('typedoc').Application} app */
function citeInFull(app) {
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, (context) => {
    for (const reflection of Object.values(context.project.reflections))
      for (const tag of reflection.comment?.getTags('@source') ?? [])
        for (const part of tag.content) if (part.kind === 'text') part.text = sourceInFull(part.text)
  })
}

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
  plugin: [citeInFull],
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
