/** How often the intervals of a fitted medium hold the true value, how wide they are, and how long a fit takes. */
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerFlowRichards1931,
  type FlowStep,
  fitMediumToRecord,
  litres,
  type MediumGuess,
  minutes,
  perCentimetre,
  probeReading,
  vanGenuchten1980,
  type WaterContentChange,
  waterContent,
} from 'porewater'
import { randomNumbers } from '../src/numerics/random.js'
import { median } from './timing.js'

const container = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(10) })
const steps: FlowStep[] = Array.from({ length: 4 }, () =>
  [2, 3, 5, 10, 20].map((time, k) => ({
    duration: minutes(time),
    applied: litres(k === 0 ? 0.6 : 0),
    demand: litres(0),
  })),
).flat()
const probe = { height: centimetres(6), sensedHeight: centimetres(4) }
const start = waterContent(0.74)
const truth: MediumGuess = {
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.1),
  n: 1.8,
  saturatedConductivity: centimetresPerHour(100),
}
const guess: MediumGuess = {
  ...truth,
  alpha: perCentimetre(0.06),
  n: 2.2,
  saturatedConductivity: centimetresPerHour(40),
}
/** Errors of 3 mL and 0.003 m³/m³. */
const ERROR = 0.003

/** What drains from the true medium, and what a probe reads there. */
function record() {
  const flow = containerFlowRichards1931({
    container,
    medium: vanGenuchten1980(truth),
    saturatedConductivity: truth.saturatedConductivity,
    nodes: 21,
  })
  let state = flow.startFrom(start)
  return steps.map((during) => {
    const [next, after] = flow.step(state, during)
    state = next
    return { drained: after.drained, reading: probeReading(flow.profile(state), probe) }
  })
}

export function run(quick: boolean): void {
  const exact = record()
  const seeds = quick ? 2 : 40
  const times: number[] = []
  const tally = new Map<string, { held: number; told: number; widths: number[] }>()
  for (let seed = 1; seed <= seeds; seed++) {
    const { normal } = randomNumbers(seed)
    const begun = performance.now()
    const fit = fitMediumToRecord({
      container,
      steps,
      start,
      nodes: 21,
      drain: {
        volumes: exact.map(({ drained }) => litres(Math.max(0, drained + ERROR * normal()))),
        uncertainty: litres(ERROR),
      },
      probe: {
        ...probe,
        waterContents: exact.map(({ reading }) => waterContent(reading + ERROR * normal())),
        uncertainty: ERROR as WaterContentChange,
      },
      guess,
      fit: ['alpha', 'n', 'saturatedConductivity'],
    })
    times.push(performance.now() - begun)
    for (const { name, value, told } of fit.numbers) {
      const of = tally.get(name) ?? { held: 0, told: 0, widths: [] }
      tally.set(name, of)
      if (!told.known) continue
      const { min, max } = told.interval
      const exactly = (truth as unknown as Record<string, number>)[name]!
      of.told++
      if (min <= exactly && exactly <= max) of.held++
      of.widths.push((max - min) / 2 / value)
    }
  }
  process.stdout.write(`A medium from four shots, ${seeds} records with errors of 3 mL and 0.003 m³/m³\n`)
  for (const [name, { held, told, widths }] of tally)
    process.stdout.write(
      `  ${name.padEnd(22)} told in ${told}, interval of 95 % held the truth in ${held}, half as wide as ${(100 * median(widths)).toFixed(1)} %\n`,
    )
  process.stdout.write(`  one fit: ${(median(times) / 1000).toFixed(2)} s\n\n`)
}
