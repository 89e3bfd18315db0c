import * as z from 'zod'
import { exponentDomain } from '../../medium/curves/curve-limits.js'
import { ALPHA, BULK_DENSITY, PARTICLE_DENSITY, RESIDUAL_CONTENT } from '../../medium/domains.js'
import { PROBE_WEIGHT } from '../../probe/domains.js'
import { calibrateTwoPoint } from '../../probe/two-point.js'
import {
  BELIEVABLE,
  DRAIN_FRACTION,
  EMITTERS,
  MAX_RUN_TIME,
  PLANT_DENSITY,
  RAW_READING,
  READING_STEP,
  SATURATED_CONTENT,
  SITE_ELEVATION,
  SITE_LATITUDE,
  SUBSTRATE_VOLUME,
  VALVE_TIME,
  WATER_CONTENT,
} from '../../quantity/domains.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import type { RawReading } from '../../quantity/raw-reading.js'
import { LOCAL_ADVANCE, MIN_RISE } from '../../record/domains.js'
import { checkZone } from '../../zone/checked-zone.js'
import {
  ALLOWED_FALL,
  CONTAINER_PLANTS,
  DEPLETION,
  EMITTER_FLOW,
  FROM_LIGHT,
  LAMP_HOUR,
  LAMP_LIGHT,
  LOWER_LIMIT,
  MAX_PER_DAY,
  MAX_PER_SHOT,
  MEDIUM_HEIGHT,
  MIN_BELIEVED,
} from '../../zone/domains.js'
import type { Zone } from '../../zone/zone.js'
import { checked, numberField, quantityField, wordField } from '../field/field.js'
import { instantField } from '../field/instant-field.js'
import { choiceField, objectField, type UnknownKeys } from '../field/object-field.js'
import { calibrationSchema } from './calibration-document.js'

/** A zone with the version of its form. */
export type ZoneDocument = { readonly version: 1 } & Zone

const MAX_PROBES = 1000
const MAX_CHANGES = 1000

/** The schema of a zone. What passes it can be reviewed. */
export function zoneSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      name: wordField('name for people'),
      container: objectField(
        {
          substrateVolume: quantityField('Volume', 'volume of medium that one probe stands for', SUBSTRATE_VOLUME),
          height: quantityField('Length', 'height of the medium', MEDIUM_HEIGHT),
          plants: numberField(CONTAINER_PLANTS),
        },
        unknownKeys,
      ),
      medium: mediumField(unknownKeys).optional(),
      plantDensity: quantityField('PlantDensity', 'plants on a square metre of growing area', PLANT_DENSITY),
      cropCoefficient: quantityField('CropCoefficient', 'crop by reference evapotranspiration'),
      emitters: emittersField(unknownKeys),
      probes: z.array(probeField(unknownKeys)).max(MAX_PROBES),
      place: placeField(unknownKeys),
      lamps: lampsField(unknownKeys).optional(),
      readingStep: quantityField('Duration', 'time between two readings', READING_STEP),
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
      flow: quantityField('Flow', 'flow of one emitter', EMITTER_FLOW),
      lineFill: quantityField('Duration', 'time until all emitters run', VALVE_TIME),
    },
    unknownKeys,
  )
}

function lampsField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      on: quantityField('Duration', 'when they go on, after local midnight', LAMP_HOUR),
      off: quantityField('Duration', 'when they go off, after local midnight', LAMP_HOUR),
      irradiance: quantityField(
        'Irradiance',
        'light that they give, on the scale of the measured radiation',
        LAMP_LIGHT,
      ),
    },
    unknownKeys,
  )
}

function mediumField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      name: wordField('what it is'),
      bulkDensity: quantityField('BulkDensity', 'dry mass by volume', BULK_DENSITY),
      particleDensity: quantityField('ParticleDensity', 'density of the particles', PARTICLE_DENSITY),
      residual: quantityField('WaterContent', 'water content that no suction removes', RESIDUAL_CONTENT),
      saturated: quantityField('WaterContent', 'water content at zero suction', SATURATED_CONTENT),
      alpha: quantityField('InverseSuction', 'inverse of the suction at which it begins to drain', ALPHA),
      n: numberField(exponentDomain("exponent of van Genuchten's curve", 1)),
    },
    unknownKeys,
  )
}

/** A probe with a calibration, or with the two samples from which it is made. */
function probeField(unknownKeys: UnknownKeys) {
  const reading = numberField<RawReading>(RAW_READING)
  const sample = () =>
    objectField({ reading, waterContent: quantityField('WaterContent', 'from weighing', WATER_CONTENT) }, unknownKeys)
  return objectField(
    {
      name: wordField('its name, as in the record'),
      calibration: calibrationSchema(unknownKeys).optional(),
      samples: objectField({ dry: sample(), saturated: sample() }, unknownKeys).optional(),
      weight: numberField(PROBE_WEIGHT).optional(),
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
      ahead: quantityField('Duration', 'how far local clocks are ahead of universal time', LOCAL_ADVANCE),
    },
    unknownKeys,
  )
  return objectField(
    {
      latitude: quantityField('Latitude', 'latitude, north positive', SITE_LATITUDE),
      elevation: quantityField('Elevation', 'height above sea level', SITE_ELEVATION),
      clock: z.array(change).max(MAX_CHANGES),
    },
    unknownKeys,
  )
}

function limitsField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      maxPerDay: quantityField('Volume', 'most water of a container in a day', MAX_PER_DAY),
      maxPerShot: quantityField('Volume', 'most water of a container in one shot', MAX_PER_SHOT).optional(),
      minRunTime: quantityField('Duration', 'shortest time for which the valve may open', VALVE_TIME),
      maxRunTime: quantityField('Duration', 'longest time for which the valve may open', MAX_RUN_TIME),
      minRest: quantityField('Duration', 'shortest time between two openings', VALVE_TIME),
      drainFraction: quantityField('DrainFraction', "share of the day's water that should drain", DRAIN_FRACTION),
      allowedFall: quantityField(
        'WaterContentChange',
        'fall below the full point before the next shot',
        ALLOWED_FALL,
      ).optional(),
      depletion: quantityField(
        'DepletionFraction',
        'share of the available water that may be used, in place of allowedFall',
        DEPLETION,
      ).optional(),
      lowerLimit: quantityField('WaterContent', 'water content at which plants get nothing any more', LOWER_LIMIT),
      minBelievable: quantityField('WaterContent', 'lower water contents are doubted', MIN_BELIEVED),
      maxBelievable: quantityField('WaterContent', 'higher water contents are doubted', BELIEVABLE),
      minRise: quantityField('WaterContentChange', 'smaller rises are noise', MIN_RISE),
      firstShotAfterLight: quantityField('Duration', 'from the beginning of light to the first shot', FROM_LIGHT),
      lastShotBeforeDark: quantityField('Duration', 'from the last shot to the end of light', FROM_LIGHT),
    },
    unknownKeys,
  )
}
