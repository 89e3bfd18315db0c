/** Text with its long lines broken between words; what is drawn or lined up in columns stays as it is. */
export function wrapped(text: string, columns = 80): string {
  return text
    .split('\n')
    .flatMap((line) => (line.length < columns || DRAWN.test(line) ? [line] : brokenLine(line, columns - 1)))
    .join('\n')
}

const DRAWN = /[│└─\u2800-\u28ff]|\S {3,}\S/

function brokenLine(line: string, max: number): string[] {
  const indent = /^ */.exec(line)?.[0] ?? ''
  const lines: string[] = []
  for (const word of line.trim().split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= max) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(`${indent}${lines.length > 0 && indent !== '' ? '  ' : ''}${word}`)
  }
  return lines
}
