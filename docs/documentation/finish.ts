import { escaped, withClasses } from './html.js'

const SEARCH = `<form role="search" class="find" id="find"><label for="find-words">Search</label><input id="find-words" name="q" type="search" autocomplete="off" autocapitalize="off" spellcheck="false" placeholder="Search: drain, VPD, how much …"><div id="find-panel" hidden><p id="find-said" role="status"></p><div id="find-found"></div></div></form>`

const CAUTION =
  'A number from here is no better than what goes in. Check it against probe, scale and crop before anything waters by it. Electricity near water, acids, fertilisers and drain water are subject to local codes and licensed practice.'

/** Scripts, styles and pictures from beside the page and from nowhere else; the address of a page in a folder of the disk counts too. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'"

/** The contents of a page as TypeDoc writes it in a page of our own: search, contents, one main part, headings in order, no script but ours. */
export function finished(page: string, url: string, navigation: string): string {
  const title = /<title>([\s\S]*?)<\/title>/.exec(page)?.[1]
  const content = /<div class="col-content">([\s\S]*)<\/div>\s*<div class="col-sidebar">/.exec(page)?.[1]
  if (title === undefined || content === undefined) throw new Error(`${url} is not the page that TypeDoc used to write`)
  const up = '../'.repeat(url.split('/').length - 1)
  const plain = withoutSigns(content).replace(/(<h1[^>]*>)Type Alias (?=[\s\S]*id="units")/, '$1Kind of quantity: ')
  // The parts of a function stand beside its input and result, not below them.
  const parts = url.startsWith('functions/') ? plain.replace(/<(\/?)h4(?=[\s>])/g, '<$1h2') : plain
  const main = withClasses(headingsInOrder(parts))
  return `<!DOCTYPE html>
<html class="default" lang="en" data-base="${up || './'}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title.replace(' | ', ' · ')}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="${up}assets/style.css">
<link rel="stylesheet" href="${up}assets/highlight.css">
<link rel="stylesheet" href="${up}assets/custom.css">
<script defer src="${up}assets/find.js"></script>
</head>
<body>
<a class="skip" href="#main">Skip to the page</a>
<header class="top"><p class="brand"><a href="${up}../index.html">porewater</a></p><a href="${up}index.html">Documentation</a><a href="${up}../explorer/index.html">Explorer</a>${SEARCH}</header>
<div class="columns">
<nav class="site" aria-label="Documentation"><details id="contents"><summary>Contents</summary>${navigation}</details></nav>
<main id="main" tabindex="-1">${main}${onThisPage(main)}</main>
</div>
<footer class="bottom"><p>${CAUTION}</p></footer>
</body>
</html>
`
}

/** Signs beside headings need a second file and say nothing that words do not; the link to a heading becomes a sign of its own. */
function withoutSigns(content: string): string {
  return content
    .replace(/<summary[\s\S]*?<\/summary>/g, (summary) => summary.replace(/<a [^>]*tsd-anchor-icon[\s\S]*?<\/a>/g, ''))
    .replace(/(<a [^>]*class="tsd-anchor-icon"[^>]*>)<svg[\s\S]*?<\/svg>(<\/a>)/g, '$1#$2')
    .replace(/<svg[^>]*>\s*<use[^>]*><\/use>\s*<\/svg>/g, '')
    .replace(/<button type="button">Copy<\/button>/g, '')
}

/** The parts of a long page, at its end for reading on and at the side where there is room. */
function onThisPage(main: string): string {
  const parts = [...main.matchAll(/<h2([^>]*)>([\s\S]*?)<\/h2>/g)].flatMap(([, attributes = '', inside = '']) => {
    const id = / id="([^"]*)"/.exec(attributes)?.[1]
    const words = inside.replace(/<a [^>]*tsd-anchor-icon[\s\S]*?<\/a>|<[^>]+>/g, '').trim()
    return id === undefined || words === '' ? [] : [`<li><a href="#${escaped(id)}">${words}</a></li>`]
  })
  return parts.length < 3
    ? ''
    : `<nav class="parts" aria-label="On this page"><p>On this page</p><ul>${parts.join('')}</ul></nav>`
}

/** Headings go down one level at a time, as readers who jump from one to the next expect. */
export function headingsInOrder(page: string): string {
  const above: number[] = []
  let now = 1
  return page.replace(/<(\/?)h([1-6])(?=[\s>])/g, (_, end: string, digit: string) => {
    if (end !== '') return `</h${now}`
    const level = Number(digit)
    while (above.length > 0 && above[above.length - 1]! >= level) above.pop()
    above.push(level)
    now = above.length
    return `<h${now}`
  })
}
