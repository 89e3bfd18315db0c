import { type Family, made, readerOf } from './table.js'
import { byName } from './text-tables.js'

const WIDTH = 120

/** The part of the index of `quantity` that the tables give: every type, constructor and reader by name. */
export function indexFile(files: ReadonlyMap<string, readonly Family[]>): string {
  const lines = [...files.keys()].sort(byName).map((file) => exportLine(namesOf(files.get(file) as Family[]), file))
  return `${lines.join('\n')}\n`
}

/** Public names of the families of one file. */
function namesOf(families: readonly Family[]): { name: string; type: boolean }[] {
  return families.flatMap((family) => [
    ...family.kinds.map((kind) => ({ name: kind.name, type: true })),
    ...(made(family).length > 1 ? [{ name: family.row.name, type: true }] : []),
    ...(typeof family.row.unnamed === 'object' ? [{ name: family.row.unnamed.name, type: true }] : []),
    ...family.units.flatMap(({ make, noReader }) =>
      make === undefined
        ? []
        : [make, ...(noReader === undefined ? [readerOf(make)] : [])].map((name) => ({ name, type: false })),
    ),
  ])
}

function exportLine(names: readonly { name: string; type: boolean }[], file: string): string {
  const sorted = [...names].sort((a, b) => byName(a.name, b.name))
  const parts = sorted.map(({ name, type }) => (type ? `type ${name}` : name))
  const plain = sorted.every(({ type }) => type) ? `export type { ${sorted.map(({ name }) => name).join(', ')} }` : ''
  const line = `${plain || `export { ${parts.join(', ')} }`} from './${file}.js'`
  return line.length <= WIDTH
    ? line
    : `export {\n${parts.map((part) => `  ${part},`).join('\n')}\n} from './${file}.js'`
}
