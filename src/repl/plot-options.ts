import { InputError } from '../quantity/errors.js'

/** How a plot is drawn, and where a picture of it goes. */
export interface PlotOptions {
  /** Axes that are logarithmic. */
  readonly log: '' | 'x' | 'y' | 'xy'
  readonly save?: string
}

/** The options of `plot(f, from, to, { log: 'x', save: 'curve.svg' })`. */
export function plotOptions(given: unknown): PlotOptions {
  if (given === undefined) return { log: '' }
  if (typeof given !== 'object' || given === null)
    throw new InputError('options', `is ${String(given)}`, "write { log: 'x' } or { save: 'curve.svg' }")
  const { log = '', save, ...others } = given as Record<string, unknown>
  const [other] = Object.keys(others)
  if (other !== undefined) throw new InputError(other, 'is no option of plot', 'it has log and save')
  if (log !== '' && log !== 'x' && log !== 'y' && log !== 'xy')
    throw new InputError('log', `is ${String(log)}`, "write 'x', 'y' or 'xy'")
  if (save === undefined) return { log }
  if (typeof save !== 'string' || !/\.svg$/i.test(save))
    throw new InputError(
      'save',
      `is ${String(save)}`,
      "give the name of a file that ends in .svg: { save: 'curve.svg' }",
    )
  return { log, save }
}
