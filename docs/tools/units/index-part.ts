import { importLine } from './lines.js'
import { type Family, readerOf } from './table.js'
import { byName } from './text-tables.js'

/** The part of the index of `quantity` that the tables give: every type, constructor and reader by name. */
export function indexFile(files: ReadonlyMap<string, readonly Family[]>, kindNames: readonly string[]): string {
  const lines = [...files.keys(), 'kinds'].sort(byName).map((file) => {
    const families = files.get(file)
    const names = families === undefined ? kindNames : namesOf(families)
    return importLine(families === undefined ? 'export type' : 'export', names, `./${file}.js`)
  })
  return `${lines.join('\n')}\n`
}

/** Constructors and readers of the families of one file. */
function namesOf(families: readonly Family[]): string[] {
  return families
    .flatMap((family) =>
      family.units.flatMap(({ make, noReader }) =>
        make === undefined ? [] : [make, ...(noReader === undefined ? [readerOf(make)] : [])],
      ),
    )
    .sort(byName)
}
