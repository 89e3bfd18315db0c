import {
  type DeclarationReflection,
  DefaultTheme,
  DefaultThemeRenderContext,
  type DocumentReflection,
  JSX,
  KindRouter,
  type PageEvent,
  type ProjectReflection,
  type Reflection,
  ReflectionKind,
  type SignatureReflection,
} from 'typedoc'
import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { inputTable, type Link, resultPart, seeAlso } from './function-page.js'
import { GUIDES } from './guide-order.js'
import { boxed, escaped } from './html.js'
import { kindPart } from './kind-page.js'
import { namesIn, type Related } from './related.js'

/** What the pages are made from beside the sources. */
export interface PagesData {
  readonly catalogue: readonly CatalogueEntry[]
  readonly related: Related
  /** Names of the functions that the explorer shows. */
  readonly explorer: ReadonlySet<string>
}

/** Addresses of guides stay those of their files, whatever their titles. */
export class PagesRouter extends KindRouter {
  protected override getIdealBaseName(reflection: Reflection): string {
    return reflection.isDocument() ? `documents/${fileOf(reflection)}` : super.getIdealBaseName(reflection)
  }
}

const files = new WeakMap<object, string>()

/** Gives every guide its heading as its name. */
export function nameGuides(project: ProjectReflection): void {
  for (const guide of project.documents ?? []) {
    files.set(guide, guide.name)
    const text = guide.content.map((part) => part.text).join('')
    guide.name = /^# (.+)$/m.exec(text)?.[1]?.replace(/`/g, '') ?? guide.name
  }
}

function fileOf(guide: DocumentReflection): string {
  return files.get(guide) ?? guide.name
}

export function themeFor(data: PagesData): typeof DefaultTheme {
  const byName = new Map(data.catalogue.map((entry) => [entry.name, entry]))
  const functions = new Set(byName.keys())
  let targets: Map<string, Reflection> | undefined

  class PagesContext extends DefaultThemeRenderContext {
    readonly link: Link = (name) => {
      targets ??= targetsOf(this.page.project)
      const target = targets.get(name)
      return target === undefined || target === this.model ? undefined : this.urlTo(target)
    }
    constructor(...all: ConstructorParameters<typeof DefaultThemeRenderContext>) {
      super(...all)
      const { markdown, memberSignatureBody, reflectionTemplate } = this
      this.markdown = (parts) => boxed(markdown(parts), this.link)
      this.memberSignatureBody = (signature, options) => {
        const entry = byName.get(signature.name)
        return entry !== undefined && this.model.kindOf(ReflectionKind.Function)
          ? this.functionBody(signature, entry)
          : memberSignatureBody(signature, options)
      }
      this.reflectionTemplate = (page) => together(reflectionTemplate(page), raw(this.kindOf(page.model)))
      this.documentTemplate = (page) =>
        together(
          raw(`<div class="tsd-panel tsd-typography guide">`),
          raw(`${this.markdown(page.model.content)}${this.functionsIn(page.model)}${this.steps(page)}</div>`),
        )
    }
    functionBody(signature: SignatureReflection, entry: CatalogueEntry): JSX.Element {
      const summary = (name: string) => byName.get(name)?.summary ?? ''
      const up = this.relativeURL('../explorer/index.html')
      const explorer = data.explorer.has(entry.name) ? up : undefined
      return together(
        this.commentSummary(signature),
        raw(inputTable(entry, this.link) + resultPart(entry, this.link)),
        this.commentTags(signature),
        raw(seeAlso(entry, data.related, this.link, summary, explorer)),
      )
    }
    kindOf(model: Reflection): string {
      const kind = model.kindOf(ReflectionKind.TypeAlias) && model.parent?.name === 'quantity'
      return kind
        ? `<section class="tsd-panel tsd-typography">${kindPart(model.name, data.catalogue, this.link)}</section>`
        : ''
    }
    functionsIn(guide: DocumentReflection): string {
      const text = guide.content.map((part) => part.text).join('')
      const known = namesIn(text, functions).filter((name) => byName.get(name)?.topic !== 'quantity')
      if (known.length === 0 || known.length > 60) return ''
      const links = known.sort().flatMap((name) => {
        const url = this.link(name)
        return url === undefined ? [] : [`<a href="${url}"><code>${name}</code></a>`]
      })
      if (links.length === 0) return ''
      return `<h2 id="functions-on-this-page">Functions on this page</h2><p>${links.join(' · ')}</p>`
    }
    /** The guide before and the guide after, in the order of the job. */
    steps(page: PageEvent<DocumentReflection>): string {
      const guides = page.project.documents ?? []
      const at = guides.indexOf(page.model)
      const step = (guide: DocumentReflection | undefined, rel: string, word: string) =>
        guide === undefined ? '' : `<a rel="${rel}" href="${this.urlTo(guide)}">${word}: ${escaped(guide.name)}</a>`
      return `<nav class="steps" aria-label="Guides">${step(guides[at - 1], 'prev', 'Previous')}${step(guides[at + 1], 'next', 'Next')}</nav>`
    }
  }

  return class PagesTheme extends DefaultTheme {
    override getRenderContext(page: PageEvent<Reflection>): DefaultThemeRenderContext {
      return new PagesContext(this.router, this, page, this.application.options)
    }
  }
}

/** Every public name, and the guides, with what they lead to. */
function targetsOf(project: ProjectReflection): Map<string, Reflection> {
  const found = new Map<string, Reflection>()
  for (const topic of project.children ?? [])
    for (const one of topic.children ?? []) if (!one.isReference()) found.set(one.name, one as DeclarationReflection)
  for (const guide of project.documents ?? []) found.set(`guide:${fileOf(guide)}`, guide)
  return found
}

/** What leads from one page to the others: guides by the job, then topics; of the topic of a function also its functions. */
export function siteNavigation(project: ProjectReflection, address: string, model: Reflection): string {
  const up = '../'.repeat(address.split('/').length - 1)
  const item = (url: string, name: string) =>
    `<li><a href="${up}${url}"${url === address ? ' aria-current="page"' : ''}>${escaped(name)}</a></li>`
  const titles = new Map((project.documents ?? []).map((guide) => [fileOf(guide), guide.name]))
  const listed = new Set(GUIDES.flatMap(({ names }) => names))
  const others = { part: 'More', names: [...titles.keys()].filter((name) => !listed.has(name)) }
  const parts = [...GUIDES, others].map(({ part, names }) => {
    const items = names.flatMap((name) =>
      titles.has(name) ? [item(`documents/${name}.html`, titles.get(name) as string)] : [],
    )
    return items.length === 0 ? '' : `<p>${part}</p><ul>${items.join('')}</ul>`
  })
  const own = topicOf(model)
  const topics = (project.children ?? []).map((topic) => {
    const here = topic.name === own && topic.name !== 'quantity'
    const names = here
      ? (topic.children ?? []).filter((one) => one.kindOf(ReflectionKind.Function) && !one.isReference())
      : []
    const inside = names.map(({ name }) => item(`functions/${topic.name}.${name}.html`, name))
    const head = item(`modules/${topic.name}.html`, topic.name)
    return inside.length === 0 ? head : head.replace('</li>', `<ul>${inside.join('')}</ul></li>`)
  })
  return `<p>Guides</p>${parts.join('')}<p>Functions by topic</p><ul>${topics.join('')}</ul>`.replace(
    '<p>Guides</p><p>',
    '<p>',
  )
}

function topicOf(model: Reflection): string {
  let at: Reflection | undefined = model
  while (at?.parent !== undefined && !at.parent.isProject()) at = at.parent
  return at?.name ?? ''
}

function raw(html: string): JSX.Element {
  return JSX.createElement(JSX.Raw, { html })
}

function together(...children: JSX.Children[]): JSX.Element {
  return JSX.createElement(JSX.Fragment, null, ...children)
}
