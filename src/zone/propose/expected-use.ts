import type { ZoneDay } from '../day/zone-day.js'

/** The use that a proposal rests on. */
export interface ExpectedUse {
  /** Water that the plants of a container are expected to use on the whole day. Unit: L. */
  readonly expectedUse: number
  /** What that rests on: what was learned from the days so far, or the last day or the last 24 hours alone. */
  readonly useFrom: 'days-so-far' | 'water-balance' | 'climate'
  /** Holds nine of ten outcomes, where it was learned; the smaller use first. Unit: L. */
  readonly useBand90?: readonly [number, number]
  /** Mean radiation that it was foreseen with, lamps included, where a forecast was given. Unit: W/m². */
  readonly expectedRadiation?: number
}

/** The use to expect: what the days so far have taught; until then that of the water balance, or of the climate where its drain cannot be believed. */
export function expectedUse({
  balance,
  climate,
  findings,
  nextUse,
  underWay,
  ...day
}: ZoneDay): ExpectedUse | undefined {
  const learned = underWay?.use ?? nextUse
  const { expectedRadiation } = underWay ?? day
  if (learned.known && learned.use > 0)
    return {
      expectedUse: learned.use,
      useFrom: 'days-so-far',
      useBand90: [learned.band90[0], learned.band90[1]],
      ...(expectedRadiation !== undefined && { expectedRadiation }),
    }
  const silent = findings.some(({ code }) => code === 'drain-gauge-silent')
  const measured = underWay?.usedLately ?? balance.use
  if (measured.known && measured.value > 0 && !(silent && climate.known))
    return { expectedUse: measured.value, useFrom: 'water-balance' }
  return climate.known ? { expectedUse: climate.value.perContainer, useFrom: 'climate' } : undefined
}
