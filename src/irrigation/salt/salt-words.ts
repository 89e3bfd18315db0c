import type { WordsOf } from '../../quantity/explained.js'
import { asPercent } from '../../quantity/in-words.js'
import { ecDoubtInWords } from './ec-doubt-words.js'
import type { SaltFinding } from './salt-finding.js'

/** Where salts go, and which number not to take for the drain fraction. */
export const SALT_WORDS: WordsOf<SaltFinding> = {
  'not-steady': [
    ({ rise, drainFraction: share, steadyFraction: implied, headingFor: heading }) => {
      const ratio =
        implied === undefined ? '' : `; the ${asPercent(implied, 0)} that the ECs suggest is not the drain fraction`
      const end = heading === undefined ? '' : `, heading for ${heading.toFixed(1)} dS/m in the drain`
      return `salts are ${rise > 0 ? 'being stored' : 'being lost'}: ${asPercent(share)} drains and the root zone changes by ${rise.toFixed(2)} dS/m in this time${end}${ratio}`
    },
    'salt balance of the root zone',
  ],
  'ec-doubted': [ecDoubtInWords, 'common practice, no source'],
}
