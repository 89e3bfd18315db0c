import type { Finding } from '../../quantity/finding.js'
import type { IrrigationLimits, LimitsRequest } from './water-limits.js'

/** What a grower should know about limits that were found. */
export function limitFindings(
  { container, minAir, depletion, lowerLimit }: LimitsRequest,
  { full, refill, bottomSuctionAtRefill }: Omit<IrrigationLimits, 'warnings'>,
  airAtCapacity: number,
): Finding[] {
  const findings: Finding[] = []
  const share = (value: number) => `${(100 * value).toFixed(1)} %`
  if (refill.waterContent >= full.waterContent)
    findings.push({
      code: 'no-room',
      level: 'danger',
      message: `the refill point of ${share(refill.waterContent)} (${refill.limit}) is not below the full point of ${share(full.waterContent)} (${full.limit}): no shot fits between them`,
      about: 'refill',
      value: refill.waterContent,
      unit: 'm³/m³',
    })
  if (minAir !== undefined && airAtCapacity < minAir)
    findings.push({
      code: 'air-below-min',
      level: 'caution',
      message: `after every shot that drains this container holds ${share(airAtCapacity)} of air, less than the ${share(minAir)} asked for; a taller container or a coarser medium would hold more`,
      about: 'minAir',
      value: airAtCapacity,
      unit: '1',
      source: 'hydrostatics',
    })
  const topSuction = bottomSuctionAtRefill + container.height
  if (topSuction > 100)
    findings.push({
      code: 'beyond-buffer',
      level: 'caution',
      message: `at the refill point the suction at the surface is ${topSuction.toFixed(0)} cm; beyond 100 cm media give little water, conduct it poorly and may not take it up again`,
      about: 'refill',
      value: topSuction,
      unit: 'cm',
      source: 'de-boodt-1972',
    })
  if (depletion !== undefined) {
    findings.push({
      code: 'field-soil-guide',
      level: 'note',
      message:
        'allowed depletions are tabulated for field soils; in a container they are guides, to be tried on the crop',
      about: 'depletion',
      value: depletion,
      unit: '1',
      source: 'allen-1998, Table 22',
    })
    if (lowerLimit === undefined)
      findings.push({
        code: 'lower-limit-assumed',
        level: 'note',
        message: 'the available water was taken to end at a suction of 100 cm, where the water buffering capacity ends',
        about: 'lowerLimit',
        source: 'de-boodt-1972',
      })
  }
  findings.push({
    code: 'drying-curve',
    level: 'note',
    message: 'a medium that has dried and is wetted again holds less than its drying curve says',
    about: 'medium',
    source: 'kool-1987',
  })
  return findings
}
