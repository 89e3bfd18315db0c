import type { Finding } from '../../quantity/finding.js'

/** What to mind when numbers of a growing medium are used: salts in the medium, packing, rewetting, closed pores. */
export const mediumNotes: readonly Finding[] = [
  {
    code: 'salts-in-coir',
    level: 'caution',
    message:
      'coir may bring sodium, potassium and chloride of its own: test the drain of a rinsed sample before planting, and rinse and buffer it as the supplier says',
    source: 'common practice, no source',
  },
  {
    code: 'salts-dry-down',
    level: 'caution',
    message:
      'salts stay when water goes: the solution left at half of the water content is about twice as strong, so a refill point that suits the water may not suit the salts',
    source: 'definition: salt is conserved when only water is taken up',
  },
  {
    code: 'packing',
    level: 'caution',
    message:
      'packing takes the largest pores first: more dry mass in the same pot means less air and often more water; fill test pots by weight, as dense as the crop',
    source: 'definition of bulk density; common practice, no source',
  },
  {
    code: 'settling',
    level: 'note',
    message:
      'organic media settle and decompose in months: repeat the bench test with an old pot before old limits are trusted',
    source: 'common practice, no source',
  },
  {
    code: 'rewetting',
    level: 'caution',
    message:
      'a medium that has dried takes up less than its drying curve says: loops of 10 % (pine bark) to 21 % (peat) have been measured',
    source: 'naasz-2008, abstract',
  },
  {
    code: 'closed-pores',
    level: 'note',
    message:
      'perlite, pumice and expanded plastics have pores that no water reaches: their particle density must be measured, tables for solids make the porosity too high',
    source: 'acta-294-1991, abstract; its authors are not named there',
  },
  {
    code: 'column-height',
    level: 'caution',
    message:
      'air space and container capacity belong to the height of the column in which they were measured, not to the medium alone',
    source: 'bilderback-1987',
  },
]
