import * as z from 'zod'
import { CALIBRATION_FORMS } from '../../probe/calibration.js'
import { CALIBRATION_EXPONENT, POROSITY } from '../../probe/domains.js'
import { restoreCalibration } from '../../probe/restore-calibration.js'
import { domainWith } from '../../quantity/domain.js'
import { RAW_READING, WATER_CONTENT } from '../../quantity/domains.js'
import { checked, numberField, quantityField, wordField } from '../field/field.js'
import { findingField } from '../field/finding-field.js'
import { choiceField, objectField, type UnknownKeys } from '../field/object-field.js'

const MAX_SAMPLES = 10_000

const finite = (quantity: string, unit = '1') =>
  numberField({ quantity, unit, min: -Infinity, max: Infinity, ends: '()', hint: 'give a finite number' })
const waterContent = (about: string) => finite(about, 'm³/m³')
const reading = (about: string) => numberField(domainWith(RAW_READING, { quantity: about }))
const count = (quantity: string) =>
  numberField({ quantity, unit: '1', min: 0, max: 1e6, ends: '[]', hint: 'give a count' }, true)

/** The schema of a calibration. */
export function calibrationSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      method: wordField('how it was found', 1000),
      form: choiceField('the curve', CALIBRATION_FORMS),
      exponent: numberField(domainWith(CALIBRATION_EXPONENT, { quantity: 'power to which the reading is raised' })),
      coefficients: z.array(finite('coefficient', 'm³/m³ per power of the reading')).max(4),
      knots: z.array(knot(unknownKeys)).max(MAX_SAMPLES),
      span: span(unknownKeys),
      porosity: quantityField('Porosity', 'porosity of the medium', POROSITY).optional(),
      samples: z
        .array(
          objectField(
            {
              reading: reading('reading of the sample'),
              waterContent: quantityField('WaterContent', 'from weighing', WATER_CONTENT),
            },
            unknownKeys,
          ),
        )
        .max(MAX_SAMPLES),
      statistics: statistics(unknownKeys).optional(),
      findings: z.array(findingField(unknownKeys)).max(1000),
    },
    unknownKeys,
  ).transform((calibration, context) =>
    checked(context, 'a calibration that can be applied', () => {
      restoreCalibration(calibration)
      return calibration
    }),
  )
}

function span(unknownKeys: UnknownKeys) {
  return objectField(
    {
      min: reading('lowest reading'),
      max: reading('highest reading'),
      driest: waterContent('water content of the driest sample'),
      wettest: waterContent('water content of the wettest sample'),
    },
    unknownKeys,
  )
}

function knot(unknownKeys: UnknownKeys) {
  return objectField(
    {
      reading: reading('reading'),
      waterContent: waterContent('water content there'),
      slope: finite('slope', 'm³/m³ per raw'),
    },
    unknownKeys,
  )
}

function statistics(unknownKeys: UnknownKeys) {
  return objectField(
    {
      samples: count('samples'),
      parameters: count('parameters'),
      rmse: waterContent('root of the mean squared residual'),
      residualStandardDeviation: waterContent('residual standard deviation'),
      bias: waterContent('mean of fitted less weighed'),
      rSquared: finite('share of the spread that the curve explains'),
      leaveOneOutRmse: waterContent('root of the mean squared error of samples left out').optional(),
      standardErrors: z.array(finite('standard error')).max(4),
      covariance: z.array(z.array(finite('covariance')).max(4)).max(4),
      centre: finite('middle of the powers of the readings'),
      halfWidth: finite('half their spread'),
    },
    unknownKeys,
  )
}
