import { InputError } from '../quantity/errors.js'
import { nearestNames } from './nearest-names.js'
import type { CitedWork, Person, WorkRow } from './work.js'
import { WORKS } from './works.table.js'

/** Every key of a work, in alphabetical order. */
export const workKeys = (): readonly string[] => Object.keys(WORKS)

/** The row behind a key, if it is one. */
export function workRow(key: string): WorkRow | undefined {
  return Object.hasOwn(WORKS, key) ? (WORKS as Readonly<Record<string, WorkRow>>)[key] : undefined
}

/**
 * The published work that sources cite by a key.
 *
 * A key is the family name of the first author and the year (`van-genuchten-1980`), or the body, the number and the year of a
 * standard (`iso-11465-1993`). It ends in a letter where an author has two works of a year, and in `nd` where no date is known.
 *
 * @param key - Key of a work, as in `@source topp-1980, Eq. 7`.
 * @procedure Looks the key up in the table of works.
 * @returns The work; what is not known of it is empty, never made up.
 * @throws `InputError` for a key that no work has, with the nearest ones.
 * @source definition
 * @example
 * citedWork('topp-1980').title // => 'Electromagnetic determination of soil water content: Measurements in coaxial transmission lines'
 * citedWork('topp-1980').authors.length // => 3
 */
export function citedWork(key: string): CitedWork {
  const row = workRow(key)
  if (row === undefined) {
    const near = nearestNames(String(key), workKeys())
    throw new InputError(
      'key',
      `no work has the key ${JSON.stringify(key)}`,
      near.length > 0 ? `try ${near.join(', ')}` : 'see bibliography()',
    )
  }
  const { authors, known, ...told } = row
  const names = authors.split('; ').filter(Boolean)
  return {
    ...{ year: '', title: '', journal: '', volume: '', pages: '', publisher: '', number: '', doi: '' },
    ...told,
    key,
    type: row.journal !== undefined ? 'article' : row.number !== undefined ? 'standard' : 'publication',
    authors: names.filter((name) => name !== 'and others').map(personOf),
    moreAuthors: names.includes('and others'),
    edited: authors.includes('(ed.)'),
    known,
  }
}

/** `Topp, G. C.` is a person, `BIPM` an institution. */
function personOf(name: string): Person {
  const [family = '', given] = name.replace(' (ed.)', '').split(', ')
  return given === undefined ? { family, institution: true } : { family, given }
}
