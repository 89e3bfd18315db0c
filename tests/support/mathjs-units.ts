import { create, createUnitDependencies, unitDependencies } from 'mathjs'

/**
 * The unit parser of mathjs with the units that growers write and it lacks, and with exact factors where it rounds.
 * Exact factors: BIPM SI Brochure (2019), NIST Special Publication 811 (2008), Appendix B.8.
 */
export const math = /* @__PURE__ */ withOwnUnits()

function withOwnUnits() {
  const own = create({ ...unitDependencies, ...createUnitDependencies })
  // Dimensions of their own: charge is not amount, light that falls on a surface is not what leaves it, and mass over mass is no
  // other ratio.
  for (const name of ['eq', 'lx']) own.createUnit(name, { prefixes: 'short' })
  own.createUnit('kgperkg')
  const units: Record<string, string> = {
    d: '86400 s',
    usgal: '3.785411784 L',
    usfloz: '29.5735295625 mL',
    exactpsi: '6894.757293168361 Pa',
    exactlb: '453.59237 g',
    exactoz: '28.349523125 g',
    mwater: '9806.65 Pa',
    cmwater: '98.0665 Pa',
    mile: '1609.344 m',
    knot: '0.5144444444444445 m/s',
    hectare: '10000 m^2',
    Wh: '3600 J',
    kWh: '3600000 J',
    gperkg: '0.001 kgperkg',
    footcandle: '10.763910416709722 lx',
  }
  for (const [name, definition] of Object.entries(units)) own.createUnit(name, { definition }, { override: true })
  return own
}

/** What people write, on the left, and what the parser reads. Longer names come first. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[µμ]/g, 'u'],
  [/[·⋅×]/g, ' '],
  [/Ω/g, 'ohm'],
  [/⁻/g, '^-'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/¹/g, '1'],
  [/\^-\^(?=\d)/g, '^-'],
  [/°\s?C\b|\bdegC\b|\bCel\b/g, 'degC'],
  [/°\s?F\b|\bdegF\b/g, 'degF'],
  [/\bUS\s+(?=gal|fl)/g, ''],
  [/^°$/g, 'deg'],
  [/^1\/(\w+)\^(\d)$/g, '$1^-$2'],
  [/^1\/(\w+)$/g, '$1^-1'],
  [/\bgph\b/g, 'usgal/h'],
  [/\bgpm\b/g, 'usgal/min'],
  [/\blph\b/g, 'L/h'],
  [/\bmph\b/g, 'mile/h'],
  [/\bgal(?:lons?)?\b/g, 'usgal'],
  [/\bfl\.?\s?oz\b|\bfloz\b/g, 'usfloz'],
  [/\bpsi\b/g, 'exactpsi'],
  [/\b(?:lbs?|pounds?)\b/g, 'exactlb'],
  [/\b(?:oz|ounces?)\b/g, 'exactoz'],
  [/\b(?:days?)\b/g, 'd'],
  [/\b(?:hr|hrs|hours?)\b/g, 'h'],
  [/\b(?:secs?|seconds?)\b/g, 's'],
  [/\b(?:mins?|minutes?)\b/g, 'minute'],
  [/\b(?:litres?|liters?|l)\b/g, 'L'],
  [/\bml\b/g, 'mL'],
  [/\binches\b/g, 'in'],
  [/\bha\b/g, 'hectare'],
  [/\blux\b/g, 'lx'],
  [/\b(?:fc|foot-?candles?)\b/g, 'footcandle'],
  [/\bmmol_?c\b/g, 'meq'],
  [/\b(?:kn|kt|knots)\b/g, 'knot'],
  [/\bcm\s+(?:of\s+)?(?:H2O|water)\b|\bcmH2O\b/g, 'cmwater'],
  [/\bm\s+(?:of\s+)?(?:H2O|water)\b|\bmH2O\b/g, 'mwater'],
]

/** A unit as people write it, in the spelling of the parser. */
export function spelled(unit: string): string {
  let text = unit.trim()
  for (const [pattern, replacement] of SPELLINGS) text = text.replace(pattern, replacement)
  return text
}
