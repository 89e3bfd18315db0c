import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { sourceFiles } from '../../docs/tools/house/source-files.js'
import { byName, writtenOut } from '../../docs/tools/written-out.js'

const entries = byName(catalogue)

describe('documentation of the built types', () => {
  const source = `/**
 * Drain over water applied.
 *
 * Take whole days.
 *
 * @equation \`f = \\frac{D}{I}\`
 * @returns Drain fraction. Unit: 1.
 * @source definition
 * @example
 * inPercent(x) // => 11.875
 */
declare function adjustedDepletionFraction(input: DepletionAdjustmentInput): DepletionFraction;
`
  const full = `/**
 * Drain over water applied.
 *
 * \`\`\`math
 * f = \\frac{D}{I}
 * \`\`\`
 *
 * Take whole days.
 *
 * @param input - A tabled depletion fraction and the demand of the day.
 * @returns Drain fraction. Unit: 1.
 * @throws \`DomainError\` outside the ranges.
 * @source definition
 * @example
 * \`\`\`ts
 * inPercent(x) // => 11.875
 * \`\`\`
 */
declare function adjustedDepletionFraction(input: DepletionAdjustmentInput): DepletionFraction;
`
  it('has what the sources leave out', () => {
    expect(writtenOut(source, entries)).toBe(full)
  })
  it('stays as it is where it is full already', () => {
    expect(writtenOut(full, entries)).toBe(full)
  })
  it('of a class or a property has its source in full and nothing else', () => {
    expect(writtenOut('  /** One.\n   * @source topp-1980, Eq. 7\n   */\n  readonly one: number', entries)).toMatch(
      / {3}\* @source Topp, G\. C\., .*, Eq\. 7 .*\n {3}\*\/\n {2}readonly one: number$/,
    )
  })
})

describe('documentation of the sources', () => {
  it('carries no fences, which are written for the reader', () => {
    const files = sourceFiles()
    expect(files.length).toBeGreaterThan(500)
    expect(files.filter(({ code }) => /^ *\* ```(?:math|ts)$/m.test(code)).map(({ path }) => path)).toEqual([])
  })
})
