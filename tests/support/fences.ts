/** The TypeScript of a page: all its fences, so that later ones see what earlier ones made. Other lines are blank and keep the line numbers. */
export function fencesOf(page: string): string {
  let inside = false
  return page
    .split('\n')
    .map((line) => {
      if (/^```/.test(line)) {
        inside = !inside && /^```ts\s*$/.test(line)
        return ''
      }
      return inside ? line : ''
    })
    .join('\n')
}
