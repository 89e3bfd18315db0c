import { asLitres } from '../../quantity/in-words.js'
import type { ZoneDay } from '../day/zone-day.js'
import { explainZoneFinding } from '../explain-zone-finding.js'
import { asMillilitres, inHours } from './report-words.js'

/** A table: what is foreseen, and what holds five and nine of ten outcomes. */
export function forecastLines({ probes, nextUse }: ZoneDay): string[] {
  const row = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cell.padEnd([34, 12, 20, 0][i]!))
      .join('')
      .trimEnd()
  const span = ({ earliest, latest }: { readonly earliest: number; readonly latest?: number }) =>
    latest === undefined ? `from ${inHours(earliest)} on` : `${(earliest / 3600).toFixed(1)} to ${inHours(latest)}`
  const volumes = ([from, to]: readonly number[]) => `${from!.toFixed(2)} to ${asLitres(to!)}`
  // A reading may rise by noise; plants give no water back.
  const used = (litres: number) => asMillilitres(Math.max(0, litres))
  const millilitres = ([from, to]: readonly number[]) => `${used(from!)} to ${used(to!)} mL`
  const counting = probes.filter(({ used }) => used)
  const refills = counting.map(({ name, timeToRefill: refill }) => {
    const what = `${name}, to its refill point`
    if (refill.known && refill.time === 0) return row([what, 'reached'])
    return refill.known
      ? row([what, inHours(refill.time), span(refill.band50), span(refill.band90)])
      : row([what, `not known (${explainZoneFinding({ code: refill.reason }).message})`])
  })
  const nextHours = counting.map(({ name, nextHour }) => {
    const what = `${name}, use of the next hour`
    return nextHour.known
      ? row([what, `${used(nextHour.use)} mL`, millilitres(nextHour.band50), millilitres(nextHour.band90)])
      : row([what, `not known (${explainZoneFinding({ code: nextHour.reason }).message})`])
  })
  const use = 'Use of the next day'
  return [
    row(['', 'expected', '5 of 10 within', '9 of 10 within']),
    ...refills,
    ...nextHours,
    nextUse.known
      ? row([use, asLitres(nextUse.use), volumes(nextUse.band50), volumes(nextUse.band90)])
      : row([use, `not known (${explainZoneFinding({ code: nextUse.reason }).message})`]),
  ]
}
