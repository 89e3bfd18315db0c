/** So many that the relations of the package that take a permittivity and nothing else have one each, which a test holds. */
const LOOPS = 32

/**
 * Loops that are alike but for their names. Engines compile a loop for what it has called so far, and closures of one text share
 * their machine code: only a loop that was written out again can be compiled for another conversion, and text made at run time is
 * forbidden by a strict content-security policy.
 */
export function loopsFile(): string {
  const names = Array.from({ length: LOOPS }, (_, i) => `loop${i}`)
  return `import type { RowLoop } from '../row-loop.js'

${names.map(loop).join('\n')}
export const ROW_LOOPS: readonly RowLoop[] = [
${names.map((name) => `  ${name},`).join('\n')}
]
`
}

// The loop lives inside the try and starts again behind a refusal, so that rows that convert pay nothing for it.
const loop = (name: string): string => `const ${name}: RowLoop = (readings, output, convert, notFinite, refused) => {
  const rows = readings.length
  let missing = 0
  let i = 0
  while (i < rows) {
    try {
      for (; i < rows; i++) {
        const reading = readings[i]!
        if (Number.isNaN(reading)) {
          output[i] = Number.NaN
          missing++
          continue
        }
        const result = convert(reading)
        output[i] = result
        if (result - result !== 0) notFinite(i, result)
      }
    } catch (error) {
      refused(i, error)
      i++
    }
  }
  return missing
}
`
