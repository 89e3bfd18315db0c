import { InputError } from '../quantity/errors.js'
import { catalogue } from './catalogue.js'
import type { CatalogueEntry } from './entry.js'
import { nearestNames } from './nearest-names.js'

/**
 * The entry of a function by its name.
 *
 * @param name - Name of a public function.
 * @procedure Looks the name up; for a name that is not there it proposes the nearest ones.
 * @returns What the package knows about the function.
 * @throws `InputError` for a name that is not there, with the nearest names.
 * @source definition
 * @example
 * entryNamed('shotVolume').result.unit // => 'L'
 * entryNamed('shotVolum') // => throws InputError
 */
export function entryNamed(name: string): CatalogueEntry {
  const entry = catalogue.find((one) => one.name === name)
  if (entry !== undefined) return entry
  const near = nearestNames(
    String(name),
    catalogue.map((one) => one.name),
  )
  throw new InputError(
    'name',
    `there is no function "${String(name).slice(0, 80)}"`,
    near.length > 0 ? `close to it: ${near.join(', ')}` : 'search with findEntries({ words })',
  )
}
