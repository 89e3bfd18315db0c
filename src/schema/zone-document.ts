import * as z from 'zod'
import { calibrateTwoPoint } from '../probe/two-point.js'
import { EMITTERS } from '../quantity/domains.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import type { RawReading } from '../quantity/raw-reading.js'
import { checkZone } from '../zone/checked-zone.js'
import type { Zone } from '../zone/zone.js'
import { calibrationSchema } from './calibration-document.js'
import { checked, numberField, quantityField, wordField } from './field.js'
import { instantField } from './instant-field.js'
import { choiceField, objectField, type UnknownKeys } from './object-field.js'

/** A zone with the version of its form. */
export type ZoneDocument = { readonly version: 1 } & Zone

const MOST_PROBES = 1000
const MOST_CHANGES = 1000

const positive = (quantity: string) =>
  numberField({ quantity, unit: '1', min: 0, max: 1e12, ends: '(]', hint: 'give more than zero' })

/** The schema of a zone. What passes it can be reviewed. */
export function zoneSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      name: wordField('name for people'),
      container: objectField(
        {
          substrateVolume: quantityField('Volume', 'volume of medium that one probe stands for'),
          height: quantityField('Length', 'height of the medium'),
          plants: positive('plants in the container'),
        },
        unknownKeys,
      ),
      medium: mediumField(unknownKeys).optional(),
      plantDensity: quantityField('PlantDensity', 'plants on a square metre of growing area'),
      cropCoefficient: quantityField('CropCoefficient', 'crop by reference evapotranspiration'),
      emitters: emittersField(unknownKeys),
      probes: z.array(probeField(unknownKeys)).max(MOST_PROBES),
      place: placeField(unknownKeys),
      lamps: lampsField(unknownKeys).optional(),
      readingStep: quantityField('Duration', 'time between two readings'),
      wateringLog: choiceField('what an entry of the watering log is', ['openings', 'days']).optional(),
      limits: limitsField(unknownKeys),
    },
    unknownKeys,
  ).transform((zone, context) =>
    checked(context, 'a zone that can be', () => {
      checkZone(zone as unknown as Zone)
      return zone
    }),
  )
}

function emittersField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      count: numberField(EMITTERS),
      flow: quantityField('Flow', 'flow of one emitter'),
      lineFill: quantityField('Duration', 'time until all emitters run'),
    },
    unknownKeys,
  )
}

function lampsField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      on: quantityField('Duration', 'when they go on, after local midnight'),
      off: quantityField('Duration', 'when they go off, after local midnight'),
      irradiance: quantityField('Irradiance', 'light that they give, on the scale of the measured radiation'),
    },
    unknownKeys,
  )
}

function mediumField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      name: wordField('what it is'),
      bulkDensity: quantityField('BulkDensity', 'dry mass by volume'),
      particleDensity: quantityField('ParticleDensity', 'density of the particles'),
      residual: quantityField('WaterContent', 'water content that no suction removes'),
      saturated: quantityField('WaterContent', 'water content at zero suction'),
      alpha: quantityField('InverseSuction', 'inverse of the suction at which it begins to drain'),
      n: numberField({
        quantity: "exponent of van Genuchten's curve",
        unit: '1',
        min: 1,
        max: 100,
        ends: '(]',
        hint: 'give the n of the retention test',
      }),
    },
    unknownKeys,
  )
}

/** A probe with a calibration, or with the two samples from which it is made. */
function probeField(unknownKeys: UnknownKeys) {
  const reading = numberField<RawReading>({
    quantity: 'reading of the sample',
    unit: 'raw',
    min: -1e12,
    max: 1e12,
    ends: '[]',
    hint: 'give what the probe reported in the sample',
  })
  const sample = () =>
    objectField({ reading, waterContent: quantityField('WaterContent', 'from weighing') }, unknownKeys)
  return objectField(
    {
      name: wordField('its name, as in the record'),
      calibration: calibrationSchema(unknownKeys).optional(),
      samples: objectField({ dry: sample(), saturated: sample() }, unknownKeys).optional(),
      weight: positive('what it stands for, beside the others').optional(),
    },
    unknownKeys,
  ).transform((probe, context) =>
    checked(context, 'samples that agree', () => {
      const { samples, ...described } = probe as typeof probe & { samples?: Samples }
      return samples === undefined ? described : { ...described, calibration: calibrateTwoPoint(samples) }
    }),
  )
}

type Sample = { readonly reading: RawReading; readonly waterContent: WaterContent }
type Samples = { readonly dry: Sample; readonly saturated: Sample }

function placeField(unknownKeys: UnknownKeys) {
  const change = objectField(
    {
      from: instantField('since when'),
      ahead: quantityField('Duration', 'how far local clocks are ahead of universal time'),
    },
    unknownKeys,
  )
  return objectField(
    {
      latitude: quantityField('Latitude', 'latitude, north positive'),
      elevation: quantityField('Elevation', 'height above sea level'),
      clock: z.array(change).max(MOST_CHANGES),
    },
    unknownKeys,
  )
}

function limitsField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      maxPerDay: quantityField('Volume', 'most water of a container in a day'),
      maxPerShot: quantityField('Volume', 'most water of a container in one shot').optional(),
      minRunTime: quantityField('Duration', 'shortest time for which the valve may open'),
      maxRunTime: quantityField('Duration', 'longest time for which the valve may open'),
      minRest: quantityField('Duration', 'shortest time between two openings'),
      drainFraction: quantityField('DrainFraction', "share of the day's water that should drain"),
      depletion: quantityField('DepletionFraction', 'share of the available water that may be used'),
      lowerLimit: quantityField('WaterContent', 'water content at which plants get nothing any more'),
      minBelieved: quantityField('WaterContent', 'lower water contents are doubted'),
      maxBelieved: quantityField('WaterContent', 'higher water contents are doubted'),
      minRise: quantityField('WaterContentChange', 'smaller rises are noise'),
      firstShotAfterLight: quantityField('Duration', 'from the beginning of light to the first shot'),
      lastShotBeforeDark: quantityField('Duration', 'from the last shot to the end of light'),
    },
    unknownKeys,
  )
}
