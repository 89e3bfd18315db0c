/** Text without the signs of code and links. */
export function plainText(text: string): string {
  return text.replace(/`/g, '').replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
}
