import {
  boxContainer,
  type CropET,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  millimetresPerDay,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'

// What steers a solver changes a result by no more than its tolerance, but how many steps it takes. The numbers are bounds with a third of
// room, not counts of today. All media are invented.
const limits = {
  h1: centimetresOfSuction(1),
  h2: centimetresOfSuction(3),
  h3HighDemand: centimetresOfSuction(80),
  h3LowDemand: centimetresOfSuction(150),
  h4: centimetresOfSuction(8000),
  highDemand: millimetresPerDay<CropET>(5),
  lowDemand: millimetresPerDay<CropET>(1),
}
const numbers = (residual: number, saturated: number, alpha: number, n: number) => ({
  residual: waterContent(residual),
  saturated: waterContent(saturated),
  alpha: perCentimetre(alpha),
  n,
})
const media = [
  { name: 'coarse', height: 7.5, conductivity: 900, curve: numbers(0.04, 0.94, 0.3, 2.4), bounds: [230, 315] },
  { name: 'medium', height: 15, conductivity: 60, curve: numbers(0.1, 0.9, 0.12, 1.6), bounds: [400, 405] },
  { name: 'fine', height: 20, conductivity: 8, curve: numbers(0.12, 0.8, 0.03, 1.35), bounds: [440, 425] },
] as const

/** A day of half hours: rest until six, then a shot of 3 % every one and a half hours beside a demand, rest again from eight. */
function dayOf({ height, conductivity, curve }: (typeof media)[number], hysteretic: boolean) {
  const container = boxContainer({ length: centimetres(50), width: centimetres(15), height: centimetres(height) })
  const flow = containerFlowRichards1931({
    container,
    medium: vanGenuchten1980(curve),
    saturatedConductivity: centimetresPerHour(conductivity),
    roots: { limits },
    ...(hysteretic && { wetting: wettingCurveKoolParker1987(curve) }),
  })
  let state = flow.startAt((z) => centimetresOfSuction(z + 2))
  const steps: number[] = []
  let stored = flow.waterContent(state) * container.volume
  for (let i = 0; i < 48; i++) {
    const light = i >= 12 && i < 40
    const [next, outcome] = flow.step(state, {
      duration: minutes(30),
      applied: litres(light && i % 3 === 0 ? 0.03 * container.volume : 0),
      demand: litres(light ? 0.006 * container.volume : 0),
    })
    state = next
    steps.push(outcome.steps)
    stored += outcome.entered - outcome.evaporated - outcome.drained - outcome.taken
  }
  return { steps, miss: flow.waterContent(state) * container.volume - stored }
}

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)

describe('a day of shots', () => {
  it.each(media.flatMap((medium) => [false, true].map((hysteretic) => [medium.name, hysteretic, medium] as const)))(
    'in a %s medium, hysteretic %s, takes no more steps than it needs',
    (_, hysteretic, medium) => {
      const { steps, miss } = dayOf(medium, hysteretic)
      expect(steps.slice(0, 12)).toEqual(Array.from({ length: 12 }, () => 1))
      expect(sum(steps)).toBeLessThan(medium.bounds[hysteretic ? 1 : 0])
      expect(sum(steps.slice(-8))).toBeLessThan(40)
      expect(Math.abs(miss)).toBeLessThan(1e-9)
    },
  )
})
