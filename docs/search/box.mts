import { type Found, find, type Index, type Kind } from '../../src/repl/search/rank.js'

declare global {
  interface Window {
    porewaterIndex?: Index
  }
}

const HEADINGS: Readonly<Record<Kind, string>> = { function: 'Functions', guide: 'Guides', kind: 'Kinds of quantities' }
const base = document.documentElement.dataset.base ?? './'
const form = document.getElementById('find') as HTMLFormElement
const field = document.getElementById('find-words') as HTMLInputElement
const panel = document.getElementById('find-panel') as HTMLElement
const said = document.getElementById('find-said') as HTMLElement
const list = document.getElementById('find-found') as HTMLElement

/** The index is a script beside the pages, so that it is read without a server too; it comes with the first search. */
let loading: Promise<Index> | undefined
function index(): Promise<Index> {
  loading ??= new Promise((done, fail) => {
    const script = document.createElement('script')
    script.src = `${base}assets/find-index.js`
    script.onload = () =>
      window.porewaterIndex === undefined ? fail(new Error('no index')) : done(window.porewaterIndex)
    script.onerror = () => fail(new Error('no index'))
    document.head.append(script)
  })
  return loading
}

async function search(): Promise<void> {
  const query = field.value
  if (query.trim() === '') return close()
  try {
    const all = await index()
    // What was typed meanwhile is answered by its own search.
    if (query === field.value) show(find(all, query), query)
  } catch {
    said.textContent = 'The search index is missing beside these pages.'
    panel.hidden = false
  }
}

function show(found: readonly Found[], query: string): void {
  const functions = found.filter(({ kind }) => kind === 'function').length
  said.textContent =
    found.length === 0
      ? `Nothing for “${query}”. Try a single word of what you want to know, such as drain, probe or day.`
      : `${functions} functions and ${found.length - functions} other pages`
  list.replaceChildren(
    ...(Object.keys(HEADINGS) as Kind[]).flatMap((kind) => {
      const own = found.filter((one) => one.kind === kind)
      return own.length === 0 ? [] : [heading(HEADINGS[kind]), listOf(own)]
    }),
  )
  panel.hidden = false
}

function heading(text: string): HTMLElement {
  const element = document.createElement('p')
  element.className = 'find-kind'
  element.textContent = text
  return element
}

function listOf(found: readonly Found[]): HTMLElement {
  const all = document.createElement('ul')
  for (const { title, url, summary } of found) {
    const link = document.createElement('a')
    link.href = base + url
    const name = document.createElement('strong')
    name.append(
      ...title
        .split(/(?<=[a-z])(?=[A-Z0-9])/)
        .flatMap((part, i) => (i === 0 ? [part] : [document.createElement('wbr'), part])),
    )
    const words = document.createElement('span')
    words.textContent = summary
    link.append(name, words)
    const item = document.createElement('li')
    item.append(link)
    all.append(item)
  }
  return all
}

function close(): void {
  panel.hidden = true
}

/** Arrows move from the field through what was found and back. */
function step(by: number): void {
  const links = [...list.querySelectorAll('a')]
  const at = links.indexOf(document.activeElement as HTMLAnchorElement) + by
  if (at < 0) field.focus()
  else links[Math.min(at, links.length - 1)]?.focus()
}

field.addEventListener('input', search)
field.addEventListener('focus', search)
form.addEventListener('submit', (event) => {
  event.preventDefault()
  list.querySelector('a')?.click()
})
form.addEventListener('keydown', (event) => {
  if (event.key === 'Escape') {
    close()
    field.focus()
    close()
  }
  if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    event.preventDefault()
    step(event.key === 'ArrowDown' ? 1 : -1)
  }
})
document.addEventListener('click', (event) => {
  if (!form.contains(event.target as Node)) close()
})
list.addEventListener('click', close)
addEventListener('keydown', (event) => {
  const typing = (event.target as HTMLElement).closest('input, textarea, select')
  if (event.key === '/' && typing === null) {
    event.preventDefault()
    field.focus()
  }
})
const asked = new URLSearchParams(location.search).get('q')
if (asked !== null) {
  field.value = asked
  void search()
}

/** The contents lie open where there is room beside the page. */
const wide = matchMedia('(min-width: 64rem)')
const contents = document.getElementById('contents') as HTMLDetailsElement | null
const unfold = () => {
  if (contents !== null) contents.open = wide.matches
}
wide.addEventListener('change', unfold)
unfold()
contents?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest' })

for (const block of document.querySelectorAll('main pre')) {
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = 'Copy'
  button.addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(block.querySelector('code')?.textContent ?? '')
      button.textContent = 'Copied'
    } catch {
      button.textContent = 'This browser does not let a page copy'
    }
  })
  const box = document.createElement('div')
  box.className = 'code'
  block.replaceWith(box)
  box.append(block, button)
}
