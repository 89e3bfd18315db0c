import { VALIDITY_WORDS } from '../quantity/explain-quantity-finding.js'
import { digits, explained, type ReasonWords, type WordsOf } from '../quantity/explained.js'
import type { CodedFinding, Finding } from '../quantity/finding.js'
import { asPercent } from '../quantity/in-words.js'
import type { ExplainedMedium, FitRefusal, MediumCode } from './medium-finding.js'

const WORDS: WordsOf<CodedFinding<MediumCode>> = {
  'more-than-full': [
    ({ value }) =>
      `water and air come to ${asPercent(value)} of the volume and leave no room for solids: a reading or the volume of medium is wrong, or the medium has swollen`,
  ],
  'odd-solids': [
    ({ value = 0, min = 0 }) =>
      `the solids would have ${digits(value)} g/cm³, where horticultural materials have 0.35 to 2.1 and minerals 2.65: ${value < min ? 'air was left in at saturation, or the volume of medium is too large' : 'the volume of medium is too small'}`,
    'fonteno-1990, abstract',
  ],
  'at-limit': [
    ({ about, value, unit }) =>
      `${about} ended at ${value} ${unit}, the limit of what is possible, so it has no standard error`,
  ],
  'residual-extrapolated': [
    ({ value = 0, max }) =>
      `the driest point, at ${max} cm, still holds ${asPercent(value, 0)} of the water between residual and saturated: the dry end is extrapolated, do not use it beyond that suction`,
  ],
  'saturation-extrapolated': [
    ({ value = 0 }) =>
      `the wettest point lacks ${asPercent(value, 0)} of the water between residual and saturated: measure saturation, or fix it`,
  ],
  'no-air-entry': [
    ({ value = 0 }) =>
      `the regression gives an air entry of ${value.toFixed(2)} kPa; take it as zero: coarse pores drain at once`,
  ],
  'no-room': [
    ({ value, limit }) =>
      `the refill point of ${asPercent(value)} is not below the full point of ${asPercent(limit)}: no shot fits between them`,
  ],
  'air-below-min': [
    ({ value, limit }) =>
      `after every shot that drains this container holds ${asPercent(value)} of air, less than the ${asPercent(limit)} asked for; a taller container or a coarser medium would hold more`,
    'hydrostatics',
  ],
  'beyond-buffer': [
    ({ value = 0, limit }) =>
      `at the refill point the suction at the surface is ${value.toFixed(0)} cm; beyond ${limit} cm media give little water, conduct it poorly and may not take it up again`,
    'de-boodt-1972',
  ],
  'field-soil-guide': [
    'allowed depletions are tabulated for field soils; in a container they are guides, to be tried on the crop',
    'allen-1998, Table 22',
  ],
  'lower-limit-assumed': [
    ({ value }) =>
      `the available water was taken to end at a suction of ${value} cm, where the water buffering capacity ends`,
    'de-boodt-1972',
  ],
  'drying-curve': ['a medium that has dried and is wetted again holds less than its drying curve says', 'kool-1987'],
  'outside-ideal-substrate': [
    ({ about = '', value, min = 0, max = 1 }) =>
      `${about.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)} is ${asPercent(value)} of the volume; an ideal substrate has ${100 * min} to ${100 * max} %`,
    'de-boodt-1972 [not confirmed, source not seen]',
  ],
  'salts-in-coir': [
    'coir may bring sodium, potassium and chloride of its own: test the drain of a rinsed sample before planting, and rinse and buffer it as the supplier says',
    'common practice, no source',
  ],
  'salts-dry-down': [
    'salts stay when water goes: the solution left at half of the water content is about twice as strong, so a refill point that suits the water may not suit the salts',
    'definition: salt is conserved when only water is taken up',
  ],
  packing: [
    'packing takes the largest pores first: more dry mass in the same pot means less air and often more water; fill test pots by weight, as dense as the crop',
    'definition of bulk density; common practice, no source',
  ],
  settling: [
    'organic media settle and decompose within months: repeat the bench test with an old pot before you trust old limits',
    'common practice, no source',
  ],
  rewetting: [
    'a medium that has dried takes up less than its drying curve says: loops of 10 % (pine bark) to 21 % (peat) have been measured',
    'naasz-2008, abstract',
  ],
  'closed-pores': [
    'perlite, pumice and expanded plastics have pores that no water reaches: measure their particle density, because tables for solids make the porosity too high',
    'acta-294-1991, abstract; its authors are not named there',
  ],
  'column-height': [
    'air space and container capacity belong to the height of the column in which they were measured, not to the medium alone',
    'bilderback-1987',
  ],
}

const REFUSALS: ReasonWords<FitRefusal> = {
  'not-told-by-points': [
    'the points do not determine all numbers of this model: its error says which, and what to measure',
  ],
  'search-without-end': ['the search for the numbers of this model did not end'],
}

/**
 * Puts a finding about a medium, its readings, its curve or its limits into words: what it is, by how much, and what to look at.
 *
 * @param finding - One of the findings of bench tests, fits, limits, regressions or `mediumNotes`, or `{ code: refused.reason }` of a model that was refused.
 * @procedure Looks up the sentence of the code and writes the numbers of the finding into it.
 * @returns A finding with the sentence for people and the source of the rule.
 * @throws `InputError` for a code that this topic does not give.
 * @source definition
 * @example
 * const [, , note] = mediumNotes
 * note && explainMediumFinding(note).source // => 'definition of bulk density; common practice, no source'
 */
export function explainMediumFinding(finding: ExplainedMedium): Finding {
  return explained<ExplainedMedium>(finding, { ...VALIDITY_WORDS, ...WORDS, ...REFUSALS })
}
