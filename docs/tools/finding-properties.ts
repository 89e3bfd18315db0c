import { type Comment, type DeclarationReflection, ReflectionKind, type SomeType, UnionType } from 'typedoc'

/** A property as the catalogue lists it. */
export interface FoundProperty {
  readonly name: string
  readonly type: SomeType | undefined
  readonly comment: Comment | undefined
  readonly optional: boolean
}

/**
 * The properties of all findings that a type can be. One that only some of them have is optional: which code has which, the types tell, and
 * who reads the catalogue knows at least all names.
 */
export function findingProperties(type: SomeType | undefined): FoundProperty[] {
  const all = alternativesOf(type)
  const names = [...new Set(all.flatMap((properties) => [...properties.keys()]))]
  return names.map((name) => {
    const own = all.flatMap((properties) => properties.get(name) ?? [])
    const types = new Map(own.flatMap((one) => (one.type === undefined ? [] : [[one.type.toString(), one.type]])))
    const [first] = types.values()
    return {
      name,
      type: types.size > 1 ? new UnionType([...types.values()]) : first,
      comment: own.find((one) => one.comment !== undefined)?.comment,
      optional: own.length < all.length || own.some((one) => one.optional),
    }
  })
}

type Properties = ReadonlyMap<string, FoundProperty>

/** Each object that a type can be, by its properties; an empty one is what forbids the properties of the others. */
function alternativesOf(type: SomeType | undefined): Properties[] {
  if (type === undefined) return []
  if (type.type === 'union') return type.types.flatMap(alternativesOf)
  if (type.type === 'intersection')
    return type.types.reduce<Properties[]>((before, part) => each(before, alternativesOf(part)), [new Map()])
  if (type.type === 'mapped') return [new Map()]
  if (type.type === 'reflection') return [own(type.declaration.children ?? [])]
  if (type.type !== 'reference') return []
  const declaration = type.reflection as DeclarationReflection | undefined
  if (declaration?.kind === ReflectionKind.Interface) return [own(declaration.children ?? [])]
  return declaration?.kind === ReflectionKind.TypeAlias ? alternativesOf(declaration.type) : []
}

/** Every alternative of the one with every alternative of the other. */
function each(one: readonly Properties[], other: readonly Properties[]): Properties[] {
  return one.flatMap((a) => other.map((b) => new Map([...a, ...b])))
}

function own(children: readonly DeclarationReflection[]): Properties {
  return new Map(
    children.map((child) => [
      child.name,
      {
        name: child.name,
        type: child.type ?? child.getSignature?.type,
        comment: child.comment ?? child.getSignature?.comment,
        optional: child.flags.isOptional,
      },
    ]),
  )
}
