import type { MediumFinding } from '../medium-finding.js'

/** What to mind when numbers of a growing medium are used: salts in the medium, packing, rewetting, closed pores. */
export const mediumNotes: readonly MediumFinding[] = [
  { code: 'salts-in-coir', level: 'caution' },
  { code: 'salts-dry-down', level: 'caution' },
  { code: 'packing', level: 'caution' },
  { code: 'settling', level: 'note' },
  { code: 'rewetting', level: 'caution' },
  { code: 'closed-pores', level: 'note' },
  { code: 'column-height', level: 'caution' },
]
