/** Text made safe for HTML; `code` between backticks becomes code. */
export function html(text: string): string {
  return escaped(text).replace(/`([^`]+)`/g, '<code>$1</code>')
}

export function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}

/** A table in a box of its own, which scrolls by itself where the page is narrow. */
export function table(label: string, head: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = (row: readonly string[]) =>
    row.map((cell, i) => (i === 0 ? `<th scope="row">${cell}</th>` : `<td>${cell}</td>`)).join('')
  return box(
    label,
    `<table><thead><tr>${head.map((cell) => `<th scope="col">${cell}</th>`).join('')}</tr></thead><tbody>${rows
      .map((row) => `<tr>${cells(row)}</tr>`)
      .join('')}</tbody></table>`,
  )
}

/** What may be wider than the page scrolls inside its own box, also by keyboard. */
function box(label: string, inside: string): string {
  return `<div class="scroll" role="group" aria-label="${escaped(label)}" tabindex="0">${inside}</div>`
}

/** Formulas and tables of a piece of HTML in boxes, and names of functions with links to their pages. */
export function boxed(page: string, link: (name: string) => string | undefined): string {
  return page
    .replace(/<p>(<math [\s\S]*?<\/math>)<\/p>/g, (_, math: string) => box('Formula', math))
    .replace(/<table>[\s\S]*?<\/table>/g, (whole) => box('Table', whole))
    .replace(/<pre><code class="(\w+)">/g, '<pre tabindex="0"><code class="$1">')
    .replace(/<pre><code>/g, '<pre tabindex="0"><code>')
    .replace(/<(a|pre|h\d)\b[\s\S]*?<\/\1>|<code>([A-Za-z]\w*)(\(\))?<\/code>/g, (whole, tag, name) => {
      const url = tag === undefined && name !== undefined ? link(name) : undefined
      return url === undefined ? whole : `<a href="${url}">${whole}</a>`
    })
}

/** Styles that formulas and tables bring along, and the classes that stand for them: the policy of the pages lets no style stand in a tag. */
const CLASSES: Readonly<Record<string, string>> = {
  'display:block math': 'block-math',
  'padding-left:0em;padding-right:0em': 'pad-none',
  'padding-left:1em;padding-right:0em': 'pad-left',
  'math-depth:0': 'math-depth-0',
  'math-depth:1': 'math-depth-1',
  'math-depth:2': 'math-depth-2',
  'text-align:left': 'at-left',
  'text-align:center': 'at-center',
  'text-align:right': 'at-right',
}

/** A piece of HTML with classes in place of styles. */
export function withClasses(page: string): string {
  return page.replace(/<\w+(?=[^>]* style=")[^>]*>/g, (tag) => {
    const [whole = '', style = ''] = / style="([^"]*)"/.exec(tag) ?? []
    const name = CLASSES[style.replace(/\s*;\s*$/, '').replace(/\s*([:;])\s*/g, '$1')]
    if (name === undefined) throw new Error(`no class stands for the style ${style} of ${tag}`)
    const plain = tag.replace(whole, '')
    return plain.includes(' class="')
      ? plain.replace(' class="', ` class="${name} `)
      : plain.replace(/^<\w+/, (start) => `${start} class="${name}"`)
  })
}
