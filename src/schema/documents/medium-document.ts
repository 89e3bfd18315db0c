import * as z from 'zod'
import { SATURATED_CONDUCTIVITY } from '../../flow/domains.js'
import { type BrooksCoreyParameters, brooksCorey1964 } from '../../medium/curves/brooks-corey-1964.js'
import { type CampbellParameters, campbell1974 } from '../../medium/curves/campbell-1974.js'
import { exponentDomain } from '../../medium/curves/curve-limits.js'
import { durner1994 } from '../../medium/curves/durner-1994.js'
import { type FredlundXingParameters, fredlundXing1994 } from '../../medium/curves/fredlund-xing-1994.js'
import { type KosugiParameters, kosugi1996 } from '../../medium/curves/kosugi-1996.js'
import { type LogLogisticRetention, logLogisticRetention } from '../../medium/curves/log-logistic-retention.js'
import { type FiveParameterRetention, milksFontenoLarson1989 } from '../../medium/curves/milks-fonteno-larson-1989.js'
import type { RetentionModel } from '../../medium/curves/retention-model.js'
import { type VanGenuchtenParameters, vanGenuchten1980 } from '../../medium/curves/van-genuchten-1980.js'
import {
  type VanGenuchtenBurdineParameters,
  vanGenuchtenBurdine1980,
} from '../../medium/curves/van-genuchten-burdine-1980.js'
import {
  ALPHA,
  BULK_DENSITY,
  COARSE_SHARE,
  PORE_CONNECTION,
  RESIDUAL_CONTENT,
  SOME_SUCTION,
} from '../../medium/domains.js'
import { SATURATED_CONTENT, SOME_POROSITY } from '../../quantity/domains.js'
import type {
  BulkDensity,
  HydraulicConductivity,
  InverseSuction,
  Porosity,
  Share,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import { requireMade, requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { checked, numberField, quantityField, wordField } from '../field/field.js'
import { objectField, type UnknownKeys } from '../field/object-field.js'

/** Retention models that a document can name, by the `kind` of the model. */
export type RetentionName =
  | 'van-genuchten-1980'
  | 'van-genuchten-burdine-1980'
  | 'brooks-corey-1964'
  | 'campbell-1974'
  | 'kosugi-1996'
  | 'log-logistic'
  | 'milks-fonteno-larson-1989'
  | 'fredlund-xing-1994'
  | 'durner-1994'

/** A growing medium as it is stored: which curve it has, with which numbers. */
export interface MediumDocument {
  readonly version: 1
  /** Name for people. */
  readonly name?: string
  /** Equation of the retention curve. */
  readonly model: RetentionName
  /** Numbers of the equation, by the names of the model. Unit: that of each parameter. */
  readonly parameters: Readonly<Record<string, number>>
  /** Total porosity. Unit: 1. */
  readonly porosity?: Porosity
  /** Dry mass by volume. Unit: g/cm³. */
  readonly bulkDensity?: BulkDensity
  /** Conductivity at saturation. Unit: cm/h. */
  readonly saturatedConductivity?: HydraulicConductivity
  /** Where the numbers come from. */
  readonly source?: string
}

const saturated = () => quantityField('WaterContent', 'saturated water content', SATURATED_CONTENT)
const suction = (about: string) => quantityField('SuctionHead', about, SOME_SUCTION)
const alpha = () => quantityField('InverseSuction', 'scale of the suction', ALPHA)
const exponent = (about: string, min = 0) => numberField(exponentDomain(about, min))
const connection = () => numberField(PORE_CONNECTION).optional()
const limits = () => ({
  residual: quantityField('WaterContent', 'residual water content', RESIDUAL_CONTENT),
  saturated: saturated(),
})

/** Parameters of each model, and the model from them. */
const MODELS: Readonly<
  Record<RetentionName, { shape: () => z.core.$ZodLooseShape; make: (parameters: never) => RetentionModel }>
> = {
  'van-genuchten-1980': {
    shape: () => ({ ...limits(), alpha: alpha(), n: exponent('exponent n', 1), poreConnection: connection() }),
    make: (parameters: VanGenuchtenParameters) => vanGenuchten1980(parameters),
  },
  'van-genuchten-burdine-1980': {
    shape: () => ({ ...limits(), alpha: alpha(), n: exponent('exponent n', 2), poreConnection: connection() }),
    make: (parameters: VanGenuchtenBurdineParameters) => vanGenuchtenBurdine1980(parameters),
  },
  'brooks-corey-1964': {
    shape: () => ({
      ...limits(),
      airEntry: suction('suction at which air enters'),
      lambda: exponent('index of the pore sizes'),
      poreConnection: connection(),
    }),
    make: (parameters: BrooksCoreyParameters) => brooksCorey1964(parameters),
  },
  'campbell-1974': {
    shape: () => ({
      saturated: saturated(),
      airEntry: suction('suction at which air enters'),
      b: exponent('exponent of the water content'),
    }),
    make: (parameters: CampbellParameters) => campbell1974(parameters),
  },
  'kosugi-1996': {
    shape: () => ({
      ...limits(),
      medianSuction: suction('suction at which half of the water has gone'),
      sigma: exponent('standard deviation of the logarithm of the suction'),
      poreConnection: connection(),
    }),
    make: (parameters: KosugiParameters) => kosugi1996(parameters),
  },
  'log-logistic': {
    shape: () => ({
      ...limits(),
      halfSuction: suction('suction at which half of the water has gone'),
      slope: exponent('exponent of the suction'),
      poreConnection: connection(),
    }),
    make: (parameters: LogLogisticRetention) => logLogisticRetention(parameters),
  },
  'milks-fonteno-larson-1989': {
    shape: () => ({
      ...limits(),
      alpha: alpha(),
      n: exponent('exponent n'),
      m: exponent('exponent m'),
      poreConnection: connection(),
    }),
    make: (parameters: FiveParameterRetention) => milksFontenoLarson1989(parameters),
  },
  'fredlund-xing-1994': {
    shape: () => ({
      saturated: saturated(),
      scaleSuction: suction('scale of the suction'),
      n: exponent('exponent n'),
      m: exponent('exponent m'),
      residualSuction: suction('suction of the residual water').optional(),
    }),
    make: (parameters: FredlundXingParameters) => fredlundXing1994(parameters),
  },
  'durner-1994': {
    shape: () => ({
      ...limits(),
      coarseShare: quantityField('Share', 'share of the coarse pores', COARSE_SHARE),
      coarseAlpha: alpha(),
      coarseN: exponent('exponent of the coarse pores', 1),
      fineAlpha: alpha(),
      fineN: exponent('exponent of the fine pores', 1),
      poreConnection: connection(),
    }),
    make: (flat: FlatDurner) => durner1994(familiesOf(flat)),
  },
}

interface FlatDurner {
  readonly residual: WaterContent
  readonly saturated: WaterContent
  readonly coarseShare: Share
  readonly coarseAlpha: InverseSuction
  readonly coarseN: number
  readonly fineAlpha: InverseSuction
  readonly fineN: number
  readonly poreConnection?: number
}

function familiesOf({ coarseAlpha, coarseN, fineAlpha, fineN, ...rest }: FlatDurner) {
  return { ...rest, coarse: { alpha: coarseAlpha, n: coarseN }, fine: { alpha: fineAlpha, n: fineN } }
}

/** The schema of a medium; a medium that passes it has a curve. */
export function mediumSchema(unknownKeys: UnknownKeys) {
  const kept = unknownKeys
  const names = Object.keys(MODELS) as [RetentionName, ...RetentionName[]]
  const options = names.map((name) =>
    objectField(
      {
        version: z.literal(1),
        name: wordField('name for people').optional(),
        model: z.literal(name),
        parameters: objectField(MODELS[name].shape(), kept),
        porosity: quantityField('Porosity', 'total porosity', SOME_POROSITY).optional(),
        bulkDensity: quantityField('BulkDensity', 'dry mass by volume', BULK_DENSITY).optional(),
        saturatedConductivity: quantityField(
          'HydraulicConductivity',
          'conductivity at saturation',
          SATURATED_CONDUCTIVITY,
        ).optional(),
        source: wordField('where the numbers come from', 1000).optional(),
      },
      kept,
    ),
  )
  return z
    .discriminatedUnion('model', options as unknown as [(typeof options)[number]], {
      error: () => `a medium whose model is one of ${names.join('; ')}`,
    })
    .transform((document, context) =>
      checked(context, 'numbers of one curve', () => {
        mediumFromDocument(document as unknown as MediumDocument)
        return document
      }),
    )
}

/**
 * The retention model that a stored medium describes.
 *
 * @procedure Looks the equation up by its name and builds it from its numbers.
 * @param document - The medium, made by `readDocument`.
 * @returns The retention curve, with a conductivity where the equation has one.
 * @throws `DomainError` and `InputError` as the equation itself.
 * @source definition
 * @example
 * const medium = readDocument('medium', {
 *   version: 1,
 *   model: 'van-genuchten-1980',
 *   parameters: { residual: '12 %', saturated: '93 %', alpha: 0.1, n: 1.6 },
 * })
 * mediumFromDocument(medium).waterContent(centimetresOfSuction(10)) // => 0.744595
 */
export function mediumFromDocument(document: MediumDocument): RetentionModel {
  requireObject(document, 'document')
  oneOf(document.model, Object.keys(MODELS) as RetentionName[], 'document.model')
  return MODELS[document.model].make(document.parameters as never)
}

/**
 * A retention model as a document that can be stored and read again.
 *
 * @procedure Takes the name and the numbers that every retention model carries.
 * @param model - The model, made by `vanGenuchten1980` or any other equation of the package.
 * @returns The document, to be completed with a name or a source and written with `writeDocument`.
 * @source definition
 * @example
 * const curve = campbell1974({ saturated: waterContent(0.9), airEntry: centimetresOfSuction(4), b: 3 })
 * documentFromMedium(curve).parameters // => { saturated: 0.9, airEntry: 4, b: 3 }
 */
export function documentFromMedium(model: RetentionModel): MediumDocument {
  requireMade(model, 'waterContent', 'model')
  return { version: 1, model: model.kind as RetentionName, parameters: model.parameters }
}
