import type { KindRow } from '../../../src/quantity/unit-row.js'
import { WIDTH } from './lines.js'
import { type Family, made, quoted } from './table.js'

/** Names of the types that a family has: its kinds, and what stands for any of them. */
export function typeNames(family: Family): string[] {
  const { name, unnamed } = family.row
  return [
    ...family.kinds.map((kind) => kind.name),
    ...(made(family).length > 1 ? [name] : []),
    ...(typeof unnamed === 'object' ? [unnamed.name] : []),
  ]
}

/** All kinds, and the unions of those that one unit can make. */
export function kindsFile(families: readonly Family[]): string {
  const types = families.flatMap((family) => [
    ...family.kinds.map((kind) => kindType(family, kind)),
    ...unionTypes(family),
  ])
  return `import type { Kind } from '../kind.js'\n\n${types.filter((part) => part !== '').join('\n\n')}\n`
}

function kindType(family: Family, kind: KindRow): string {
  const text = kind.given ? kind.mark : `${kind.mark}, from ${makersOf(family, kind)}`
  const brand = `Kind<${quoted(text)}${kind.scale === 'point' ? ", 'point'" : ''}>`
  const head = `/** ${kind.about} Unit: ${family.row.unit}. */\nexport type ${kind.name} = number &`
  return typeLine(head, brand)
}

/** The constructors that a compile error names, and for an amount how to take a part of it. */
function makersOf(family: Family, kind: KindRow): string {
  const all = family.units.flatMap((unit) => unit.make ?? [])
  const named = family.row.named ?? (all.length > 3 ? all.slice(0, 2) : all)
  const calls = [...named.map((name) => `${name}()`), ...(kind.scale === 'point' ? [] : ['scale()'])]
  return calls.length > 1 ? `${calls.slice(0, -1).join(', ')} or ${calls.at(-1)}` : String(calls[0])
}

function typeLine(head: string, brand: string): string {
  const line = `${head} ${brand}`
  return (line.split('\n').at(-1) as string).length <= WIDTH ? line : `${head}\n  ${brand}`
}

function unionTypes(family: Family): string[] {
  const { row } = family
  if (row.kinds === undefined || made(family).length === 1) return []
  const { unnamed } = row
  const makers = family.units.flatMap(({ make }) => (make === undefined ? [] : [`\`${make}()\``]))
  const given = row.unit === '1' ? `${makers.join(' and ')} can make` : `is given in ${row.unit}`
  const members = [...made(family).map((kind) => kind.name), ...(row.makesToo ?? [])]
  const line = `export type ${row.name} = ${members.join(' | ')}`
  const union =
    line.length <= WIDTH ? line : `export type ${row.name} =\n${members.map((name) => `  | ${name}`).join('\n')}`
  return [
    `/** Any kind that ${given}. The place where a value is used says which one it is. */\n${union}`,
    typeof unnamed === 'object'
      ? typeLine(
          `/** What a unit constructor gives when nothing says which kind is meant; no function takes it. */\nexport type ${unnamed.name} = number &`,
          `Kind<${quoted(unnamed.mark)}>`,
        )
      : '',
  ]
}
