/** The elements of an XML text, or an error where it is not well formed (XML 1.0, W3C, for the part that pictures use). */
export interface XmlElement {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly children: XmlElement[]
  text: string
}

export function parseXml(text: string): XmlElement {
  const root: XmlElement = { name: '', attributes: {}, children: [], text: '' }
  const open: XmlElement[] = [root]
  const token = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/y
  while (token.lastIndex < text.length) {
    const at = token.lastIndex
    const match = token.exec(text)
    if (match === null) throw new Error(`not XML at ${at}: ${text.slice(at, at + 60)}`)
    const [, closing, name, attributes = '', empty, words] = match
    const parent = open[open.length - 1]!
    if (words !== undefined) {
      if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(words)) throw new Error(`a bare & in ${words}`)
      parent.text += words
    } else if (closing) {
      if (parent.name !== name) throw new Error(`</${name}> closes <${parent.name}>`)
      open.pop()
    } else {
      const element: XmlElement = { name: name as string, attributes: attributesOf(attributes), children: [], text: '' }
      parent.children.push(element)
      if (!empty) open.push(element)
    }
  }
  if (open.length !== 1) throw new Error(`<${open[open.length - 1]?.name}> is not closed`)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 forbids them
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff\ufffe\uffff]/u.test(text))
    throw new Error('a forbidden character')
  const [svg] = root.children
  if (svg === undefined || root.children.length !== 1) throw new Error('not one document')
  return svg
}

function attributesOf(text: string): Record<string, string> {
  const found: Record<string, string> = {}
  for (const [, name, value] of text.matchAll(/([\w:-]+)="([^"]*)"/g)) {
    if (Object.hasOwn(found, name as string)) throw new Error(`${name} twice`)
    if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(value as string)) throw new Error(`a bare & in ${value}`)
    found[name as string] = value as string
  }
  return found
}

/** All elements below one, itself included. */
export function every(element: XmlElement): XmlElement[] {
  return [element, ...element.children.flatMap(every)]
}

/** Numbers of every attribute that places something; all must be finite. */
export function badNumbers(svg: XmlElement): string[] {
  const placing = ['x', 'y', 'x1', 'x2', 'y1', 'y2', 'cx', 'cy', 'r', 'd', 'width', 'height', 'transform', 'viewBox']
  return every(svg).flatMap(({ name, attributes }) =>
    placing
      .filter((key) => /NaN|Infinity|undefined|null/.test(attributes[key] ?? ''))
      .map((key) => `${name} ${key}=${attributes[key]}`),
  )
}
