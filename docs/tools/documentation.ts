/**
 * Writes the typed documentation with the guides and its own search into docs/site/api: `npm run docs`. Formulas become MathML while
 * the pages are built, so that reading them needs neither a network nor a script.
 */
import { appendFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { Application, type Context, Converter, type PageEvent, type ProjectReflection, type Reflection } from 'typedoc'
import { catalogue } from '../../src/catalogue/index.js'
import { finished } from '../documentation/finish.js'
import { guideNames } from '../documentation/guide-order.js'
import { originsOf, withImports } from '../documentation/imports.js'
import { fences } from '../documentation/markdown.js'
import { relatedOf } from '../documentation/related.js'
import { nameGuides, PagesRouter, siteNavigation, themeFor } from '../documentation/theme.js'
import { searchIndex } from '../search/build.js'
import { BLOCK_TAGS } from './catalogue.js'
import { equationOf } from './explorer.js'
import { topics as allTopics } from './topics.js'
import { byName, writeOut } from './written-out.js'

const OPTIONS = {
  name: 'porewater',
  skipErrorChecking: true,
  disableGit: true,
  disableSources: true,
  validation: { notExported: false, invalidLink: true, notDocumented: false },
  blockTags: BLOCK_TAGS,
  hideGenerator: true,
  // A guide and the README bring their own title.
  headings: { readme: false, document: false },
  includeHierarchySummary: false,
} as const

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

export interface Wanted {
  /** Folder that is written. */
  readonly out: string
  /** Topics to describe; all of them by default. */
  readonly topics?: readonly string[]
}

export async function writeDocumentation({ out, topics = allTopics() }: Wanted): Promise<ProjectReflection> {
  const explorer = (await Promise.all(catalogue.map(equationOf))).flatMap((one) =>
    one === undefined ? [] : [one.name],
  )
  let origins = originsOf([])
  const app = await Application.bootstrap({
    ...OPTIONS,
    entryPoints: topics.map((topic) => here(`../../src/${topic}/index.ts`)),
    tsconfig: here('../documentation/tsconfig.json'),
    readme: here('../../README.md'),
    projectDocuments: guideNames().map((name) => here(`../guides/${name}.md`)),
    customCss: here('../documentation/page.css'),
    markdownItLoader: fences((code) => withImports(code, origins)),
    theme: 'porewater',
    router: 'porewater',
    out,
  } as never)
  const data = { catalogue, related: relatedOf(catalogue), explorer: new Set(explorer) }
  app.renderer.defineTheme('porewater', themeFor(data))
  app.renderer.defineRouter('porewater', PagesRouter)
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, (context: Context) => writeOut(context.project, byName(catalogue)))
  const project = await app.convert()
  if (project === undefined) throw new Error('TypeDoc could not read the sources')
  nameGuides(project)
  origins = originsOf(
    (project.children ?? []).flatMap((topic) =>
      (topic.children ?? []).filter((one) => !one.isReference()).map((one) => [one.name, topic.name] as const),
    ),
  )
  app.renderer.on('endPage', (page: PageEvent) => {
    page.contents = finished(page.contents ?? '', page.url, siteNavigation(project, page.url, page.model as Reflection))
  })
  await app.generateDocs(project, out)
  appendFileSync(join(out, 'assets/custom.css'), readFileSync(here('../documentation/formulas.css')))
  if (app.logger.hasErrors()) throw new Error('the documentation could not be written: see the errors above')
  await writeAssets(out)
  return project
}

async function writeAssets(out: string): Promise<void> {
  // The pages need none of these: search, contents and signs are written into them.
  for (const unused of ['main.js', 'search.js', 'icons.js', 'icons.svg', 'navigation.js', 'hierarchy.js'])
    rmSync(`${out}/assets/${unused}`, { force: true })
  const index = JSON.stringify(searchIndex(catalogue)).replace(/</g, '\\u003c')
  writeFileSync(`${out}/assets/find-index.js`, `window.porewaterIndex=${index}\n`)
  await build({
    entryPoints: [here('../search/box.mts')],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
    outfile: `${out}/assets/find.js`,
  })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const out = here('../site/api')
  await writeDocumentation({ out, ...(process.argv[2] === undefined ? {} : { topics: process.argv[2].split(',') }) })
}
