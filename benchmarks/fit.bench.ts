/** Fitting retention models to 30 points with noise, from the automatic start to the standard errors. */
import {
  centimetresOfSuction,
  fitRetention,
  formBrooksCorey1964,
  formKosugi1996,
  formVanGenuchten1980,
  perCentimetre,
  pF,
  type RetentionPoint,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { compare, report } from './timing.js'

export function run(quick: boolean): void {
  // An invented medium and a fixed wobble of 0.005 m³/m³ instead of random noise, so that every run does the same work.
  const medium = vanGenuchten1980({
    residual: waterContent(0.12),
    saturated: waterContent(0.93),
    alpha: perCentimetre(0.1),
    n: 1.6,
  })
  const points: RetentionPoint[] = Array.from({ length: 30 }, (_, i) => {
    const suction = i === 0 ? centimetresOfSuction(0.5) : pF((3.2 * i) / 29)
    return { suction, waterContent: waterContent(medium.waterContent(suction) + 0.005 * Math.sin(7 * i * i)) }
  })
  const forms = [formVanGenuchten1980, formBrooksCorey1964, formKosugi1996]
  report(
    'Fit of one model to 30 points',
    compare(
      forms.map((form) => ({ name: form.kind, run: () => fitRetention({ form, points }).rmse })),
      quick ? 15 : 101,
    ),
  )
}
