/** A day of a container in three media, invented: what the pictures of the guide show. */
import {
  boxContainer,
  type ConductiveModel,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  decisiemensPerMetre,
  type HydraulicConductivity,
  litres,
  minutes,
  type PoreWaterEC,
  perCentimetre,
  type SolutionEC,
  seconds,
  uptakeLimitsFeddes,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import type { ProfileAtTime, WaterByHeightChart } from 'porewater/chart'

const curve = (residual: number, saturated: number, alpha: number, n: number): ConductiveModel =>
  vanGenuchten1980({
    residual: waterContent(residual),
    saturated: waterContent(saturated),
    alpha: perCentimetre(alpha),
    n,
  })

const MEDIA: Record<string, readonly [ConductiveModel, HydraulicConductivity]> = {
  'stone wool': [curve(0.02, 0.95, 0.08, 3.5), centimetresPerHour(360)],
  coir: [curve(0.15, 0.9, 0.12, 1.7), centimetresPerHour(60)],
  peat: [curve(0.1, 0.92, 0.05, 1.5), centimetresPerHour(20)],
}

/** Twelve shots from seven o'clock, one an hour; light, and with it use, rises and falls between six and twenty. */
export function dayInMedium(name: string): WaterByHeightChart {
  const [medium, saturatedConductivity] = MEDIA[name]!
  const flow = containerFlowRichards1931({
    container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(10) }),
    medium,
    saturatedConductivity,
    roots: { limits: uptakeLimitsFeddes.tomato },
    salt: { startEC: decisiemensPerMetre<PoreWaterEC>(4), uptakeShare: 0.5 },
  })
  let state = flow.startAt((height) => centimetresOfSuction(height + 2))
  const moments: ProfileAtTime[] = [{ time: seconds(0), profile: flow.profile(state), drained: litres(0) }]
  for (let quarter = 0; quarter < 96; quarter++) {
    const hour = quarter / 4
    const light = Math.max(0, Math.sin((Math.PI * (hour - 6)) / 14))
    const shot = hour >= 7 && hour < 19 && quarter % 4 === 0
    const [next, { drained }] = flow.step(state, {
      duration: minutes(15),
      applied: litres(shot ? 0.45 : 0),
      demand: litres(0.1 * light + 0.002),
      feedEC: decisiemensPerMetre<SolutionEC>(2.6),
    })
    state = next
    moments.push({ time: seconds((quarter + 1) * 900), profile: flow.profile(state), drained })
  }
  return { title: `A day in ${name}, 10 cm high (invented)`, moments }
}
