import { allRetentionForms, centimetresOfSuction, fitRetention, type RetentionForm, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'

// Invented media, one for each form: the shape between 0.1 (or none) and 0.9 m³/m³.
const SHAPES: Readonly<Record<string, readonly number[]>> = {
  'van-genuchten-1980': [0.1, 1.6],
  'van-genuchten-burdine-1980': [0.1, 2.6],
  'brooks-corey-1964': [8, 0.6],
  'campbell-1974': [12, 4],
  'kosugi-1996': [25, 1.2],
  'log-logistic': [20, 1.4],
  'milks-fonteno-larson-1989': [0.08, 1.8, 0.7],
  'fredlund-xing-1994': [15, 1.8, 0.7],
  'durner-1994': [0.6, 0.3, 3, 0.005, 2],
}

/** Points of the form's own medium with errors of up to 0.004 m³/m³, which no curve meets. */
function pointsOf({ kind, make }: RetentionForm) {
  const medium = make(waterContent(0.9), waterContent(0.1), SHAPES[kind]!)
  return Array.from({ length: 18 }, (_, i) => {
    const suction = centimetresOfSuction(10 ** (-0.5 + i / 4.25))
    return { suction, waterContent: waterContent(medium.waterContent(suction) + 0.004 * Math.sin(7 * i * i)) }
  })
}

/** The form with a search that starts elsewhere: from one place more along the suctions, exponents a fifth further from their end, and shares a twentieth. */
function startedElsewhere(form: RetentionForm): RetentionForm {
  const shape = form.shape.map((parameter) => {
    if (parameter.role === 'share') return { ...parameter, trials: parameter.trials.map((share) => share + 0.05) }
    if (parameter.role !== 'exponent') return { ...parameter, trials: parameter.trials + 1 }
    const { min, trials } = parameter
    return { ...parameter, trials: trials.map((trial) => min + 1.2 * (trial - min)) }
  })
  return { ...form, shape }
}

const forms = allRetentionForms.map((form) => [form.kind, form] as const)

describe('a fit of', () => {
  it.each(forms)('%s comes to the same curve from elsewhere', (_, form) => {
    const points = pointsOf(form)
    const [usual, other] = [form, startedElsewhere(form)].map((one) => fitRetention({ form: one, points }))
    expect(other!.rmse / usual!.rmse).toBeCloseTo(1, 4)
    for (const { suction } of points)
      expect(other!.model.waterContent(suction)).toBeCloseTo(usual!.model.waterContent(suction), 4)
  })
  it.each(forms)('%s starts within what it seeks', (_, { shape }) => {
    for (const parameter of shape) {
      if (parameter.role === 'exponent')
        for (const trial of parameter.trials) expect(trial > parameter.min && trial < parameter.max).toBe(true)
      else if (parameter.role === 'share')
        for (const trial of parameter.trials) expect(trial > 0 && trial < 1).toBe(true)
      else expect(parameter.trials).toBeGreaterThan(0)
    }
  })
})
