import { WATER_DENSITY } from '../medium/domains.js'
import { domainWith } from '../quantity/domain.js'
import { SCALE_MASS } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type {
  BulkDensity,
  GravimetricWaterContent,
  Mass,
  MassFraction,
  Volume,
  WaterContent,
  WaterDensity,
} from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { constantMass } from './constant-mass.js'
import { SAMPLE_VOLUME, SOME_MASS } from './domains.js'
import type { ProbeFinding } from './probe-finding.js'

/** What is written down when a sample is weighed wet, dried in an oven and weighed again. */
export interface WeighedSample {
  /** Mass of the wet sample in its dish, at the time the probe was read. Unit: g. Range: (0, ∞). */
  readonly wetMass: Mass
  /** Mass of the dried sample in its dish, cooled in dry air. Unit: g. Range: (0, ∞). */
  readonly dryMass: Mass
  /** Mass of the empty dish. Unit: g. Range: [0, ∞). */
  readonly tareMass: Mass
  /** Mass of dish and sample at the weighing before the last, to see whether it is dry. Unit: g. Range: (0, ∞). */
  readonly previousDryMass?: Mass
  /** Volume that the sample filled when the probe was read. Unit: L. Range: (0, ∞). */
  readonly volume?: Volume
  /** Density of its water, 1 when left out. Unit: g/cm³. Range: [0.9, 1.2]. */
  readonly waterDensity?: WaterDensity
}

/** What a weighed sample held. */
export interface SampleWater {
  /** Mass of water per dry mass. Unit: g/g. */
  readonly gravimetric: GravimetricWaterContent
  /** Dry mass per wet mass. Unit: 1. */
  readonly dryMatter: MassFraction
  /** Mass of water. Unit: g. */
  readonly waterMass: Mass
  /** Volume of water per volume of medium; missing without a volume. Unit: m³/m³. */
  readonly waterContent?: WaterContent
  /** Dry mass per volume as it was read; missing without a volume. Unit: g/cm³. */
  readonly bulkDensity?: BulkDensity
  readonly findings: readonly ProbeFinding[]
}

/**
 * Water in a sample that was weighed wet, dried at 105 °C to constant mass, and weighed again.
 *
 * Dry at 105 °C (growing media after EN 13040 at 103 °C) until two weighings some hours apart differ by less than 0.1 %; peat and coir
 * take a night and more. Take the volume at the time of reading: peat and coir shrink as they dry. Coarse and pre-formed media such as
 * stone wool are weighed as whole slabs. Fertiliser salts stay in the dry mass and gypsum gives off bound water: both bias the result.
 *
 * Glassware, trays and medium from the oven burn: use tongs and heat-proof gloves and let them cool in a desiccator. Do not
 * dry medium with solvents or unknown plant-protection residues. Dry peat, coir, perlite and vermiculite make dust: wear a mask, open
 * the dish gently. Never heat a closed vessel with water in it.
 *
 * @equation `w = \frac{m_w - m_d}{m_d - m_t}, \quad \theta = \frac{m_w - m_d}{\rho_w V}`
 * @param sample - The three masses, and what else was noted.
 * @returns Water by dry mass and, with the volume, by volume; dry matter, bulk density and findings.
 * @throws `DomainError` outside the ranges; `InputError` when the masses or the volume contradict each other.
 * @source iso-11465-1993 (dry mass basis, 105 °C); iso-11461-2001 (volume basis); en-13040 (sample preparation)
 * @example
 * const sample = { wetMass: grams(251.3), dryMass: grams(86.4), tareMass: grams(52.1), volume: millilitres(286) }
 * waterOfSample(sample) // => { gravimetric: 4.80758, dryMatter: 0.172189, waterContent: 0.57657, bulkDensity: 0.11993 }
 */
export function waterOfSample(sample: WeighedSample): SampleWater {
  requireObject(sample, 'sample')
  const wet = numberIn(sample.wetMass, domainWith(SOME_MASS, { quantity: 'mass of the wet sample' }), 'wetMass')
  const dry = numberIn(sample.dryMass, domainWith(SOME_MASS, { quantity: 'mass of the dried sample' }), 'dryMass')
  const tare = numberIn(sample.tareMass, SCALE_MASS, 'tareMass')
  if (!(dry > tare))
    throw new InputError('dryMass', `${dry} g is not above the dish of ${tare} g`, 'weigh dish and dry sample together')
  if (wet < dry)
    throw new InputError('wetMass', `${wet} g is below the ${dry} g of the dried sample`, 'the two may be swapped')
  const water = wet - dry
  const findings: ProbeFinding[] = []
  if (sample.previousDryMass !== undefined) {
    const previousMass = numberIn(sample.previousDryMass, SOME_MASS, 'previousDryMass') as Mass
    const { change, constant } = constantMass({ previousMass, lastMass: sample.dryMass })
    if (!constant) findings.push(notDry(change))
  }
  const known = {
    gravimetric: (water / (dry - tare)) as GravimetricWaterContent,
    dryMatter: ((dry - tare) / (wet - tare)) as MassFraction,
    waterMass: water as Mass,
    findings,
  }
  return sample.volume === undefined ? known : { ...known, ...byVolume(sample, water, dry - tare) }
}

/** Water and dry medium by the volume that the sample filled. */
function byVolume({ volume, waterDensity }: WeighedSample, water: number, medium: number) {
  const cubicCentimetres = numberIn(volume as Volume, SAMPLE_VOLUME, 'volume') * 1000
  const density = waterDensity === undefined ? 1 : numberIn(waterDensity, WATER_DENSITY, 'waterDensity')
  const waterContent = water / (density * cubicCentimetres)
  if (waterContent > 1)
    throw new InputError(
      'volume',
      `${volume} L hold less than the ${water} g of water`,
      'give the volume that the whole weighed sample filled, in the unit it was measured in',
    )
  const bulkDensity = medium / cubicCentimetres
  if (bulkDensity < MIN_BULK_DENSITY)
    throw new InputError(
      'volume',
      `${volume} L hold only ${medium} g of dry medium, ${bulkDensity.toPrecision(2)} g/cm³, lighter than any foam`,
      'give masses in grams, and the volume that the sample filled in litres',
    )
  return { waterContent: waterContent as WaterContent, bulkDensity: bulkDensity as BulkDensity }
}

/** The lightest foams that plants grow in have 0.01. Common practice, no source. Unit: g/cm³. */
const MIN_BULK_DENSITY = 0.005

function notDry(change: number): ProbeFinding {
  return { code: 'not-dry-yet', level: 'caution', about: 'dryMass', value: change, unit: '1' }
}
