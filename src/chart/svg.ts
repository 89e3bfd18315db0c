type Attributes = Readonly<Record<string, string | number | undefined>>

/** An SVG element as text. Attribute values are escaped; children are SVG text already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const inside = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? tidy(value) : escapeText(value as string)}"`)
    .join('')
  return children.length === 0 ? `<${name}${inside}/>` : `<${name}${inside}>${children.join('')}</${name}>`
}

/** Text that may contain anything, made safe for SVG. */
export function escapeText(text: string): string {
  const named: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }
  // Control characters and halves of characters are not allowed in XML at all.
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff\ufffe\uffff]/gu, '')
      .replace(/[&<>"']/g, (c) => named[c]!)
  )
}

/** A coordinate with no more digits than a screen can show. */
export function tidy(value: number): string {
  return String(Math.round(value * 100) / 100)
}
