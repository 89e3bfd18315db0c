import { explained, type OneCodeEach } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { WeatherAssumption } from './reference/weather-assumption.js'
import type { WeatherFinding } from './reference/weather-doubts.js'
import { ASSUMPTION_WORDS, DOUBT_WORDS } from './reference/weather-words.js'
import type { UseFinding } from './use-finding.js'
import { USE_WORDS } from './use-words.js'

/** Everything that is found out about weather and water use, and what had to be assumed. */
export type DemandFinding = OneCodeEach<[WeatherFinding, WeatherAssumption, UseFinding]>

/**
 * Puts a doubt about the weather or about water use into words, or what was assumed of the weather: what, by how much, and what to
 * look at.
 *
 * @procedure Looks up the sentence of the code and writes its numbers with their units into it.
 * @param finding - One of the findings or assumptions of a reference evapotranspiration, or of a use that was computed or fitted.
 * @returns A finding with the sentence for people, and where the rule comes from.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition; the source of each rule stands in its finding
 * @example
 * const day = dailyReferenceETFao56({
 *   latitude: latitude(50.8), elevation: metresAboveSeaLevel(100), day: dayOfYear(187),
 *   maxTemperature: celsius(21.5), minTemperature: celsius(12.3), solar: megajoulesPerSquareMetreDay(0),
 * })
 * const [dark] = day.findings.map(explainDemandFinding)
 * dark?.message // => 'the solar radiation of 0 MJ/m²/d is below 1.23 MJ/m²/d, less than the darkest clouds let through: check clock and sensor'
 */
export function explainDemandFinding(finding: DemandFinding): Finding {
  return explained<DemandFinding>(finding, { ...DOUBT_WORDS, ...ASSUMPTION_WORDS, ...USE_WORDS })
}
