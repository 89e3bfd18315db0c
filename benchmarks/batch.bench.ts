/** A long series into a reused array: loops by hand against convertInto, with and without gaps and refusals. */
import {
  convertInto,
  type Permittivity,
  waterContentKellnerLundin2001,
  waterContentLedieu1986,
  waterContentNagare2011,
  waterContentPepin1992,
  waterContentRothMineral1992,
  waterContentRothOrganic1992,
  waterContentTopp1980,
} from 'porewater'
import { compare, report } from './timing.js'

const bare = (e: number) => ((4.3e-6 * e - 5.5e-4) * e + 2.92e-2) * e - 5.3e-2

/** The formula alone: no check of the readings, no gaps, no counts. */
function formulaLoop(readings: Float64Array, output: Float64Array): number {
  for (let i = 0; i < readings.length; i++) output[i] = bare(readings[i]!)
  return output[readings.length - 1]!
}

/** What one would write by hand around the public function; the first bad reading ends it. */
function handLoop(readings: Float64Array, output: Float64Array): number {
  for (let i = 0; i < readings.length; i++) output[i] = waterContentTopp1980(readings[i] as Permittivity)
  return output[readings.length - 1]!
}

function batch(readings: Float64Array, output: Float64Array): number {
  convertInto({ readings, output, convert: waterContentTopp1980 })
  return output[readings.length - 1]!
}

export function run(quick: boolean): void {
  const rows = quick ? 100_000 : 1_000_000
  const readings = Float64Array.from({ length: rows }, (_, i) => 2 + (i % 790) / 10)
  const withGaps = readings.map((value, i) => (i % 100 === 50 ? Number.NaN : value))
  const withRefusals = readings.map((value, i) => (i % 1000 === 500 ? 0 : value))
  const output = new Float64Array(rows)
  const hand = { name: 'hand-written loop', run: () => handLoop(readings, output) }
  const ours = { name: 'convertInto', run: () => batch(readings, output) }

  report(
    `Topp 1980 over ${rows} readings into a reused array, the only conversion of the process`,
    compare([
      hand,
      ours,
      { name: 'formula without checks', run: () => formulaLoop(readings, output) },
      { name: 'convertInto, 1 % gaps', run: () => batch(withGaps, output) },
      { name: 'convertInto, 0.1 % refused', run: () => batch(withRefusals, output) },
    ]),
  )

  // One loop for all would from here on call the conversion instead of having a copy of it.
  for (const convert of [waterContentLedieu1986, waterContentRothOrganic1992, waterContentKellnerLundin2001])
    convertInto({ readings, output, convert })
  report('The same after three other conversions in the process', compare([hand, ours]))
  for (const convert of [
    waterContentRothMineral1992,
    waterContentNagare2011,
    waterContentPepin1992,
    (e: Permittivity) => e / 2,
  ])
    convertInto({ readings, output, convert })
  report('The same after seven', compare([hand, ours]))
}
