/**
 * Writes what the session knows about types: of every function its arguments and its result, of every named object its properties. It is
 * the part of the typings by which a quantity keeps its kind at the terminal.
 */
import {
  type DeclarationReflection,
  type ProjectReflection,
  ReflectionKind,
  type SignatureReflection,
  type SomeType,
} from 'typedoc'
import type { Signatures, SignatureType } from '../../src/repl/held/signature-type.js'

export function signaturesOf(project: ProjectReflection): Signatures {
  const functions: Record<string, SignatureType> = {}
  const kinds: Record<string, string> = {}
  const constants: Record<string, SignatureType> = {}
  const points: string[] = []
  const objects: Record<string, Signatures['objects'][string]> = {}
  for (const topic of project.children ?? []) {
    for (const declaration of topic.children ?? []) {
      const [signature] = declaration.signatures ?? []
      if (declaration.kind === ReflectionKind.Function && signature !== undefined)
        functions[declaration.name] = functionType(signature)
      else if (declaration.kind === ReflectionKind.Variable) constants[declaration.name] = typeOf(declaration.type)
      else if (isKind(declaration.type)) {
        kinds[declaration.name] = wordsOf(declaration, 'Unit') ?? '1'
        if (declaration.type?.toString().includes('"point"')) points.push(declaration.name)
      } else if (propertiesOf(declaration) !== undefined) objects[declaration.name] = objectOf(declaration)
      else if (declaration.type !== undefined) objects[declaration.name] = { is: typeOf(declaration.type) }
    }
  }
  return { functions, constants, kinds, points, objects }
}

function isKind(type: SomeType | undefined): boolean {
  return type?.type === 'intersection' && type.types.some((part) => part.type === 'reference' && part.name === 'Kind')
}

function propertiesOf(declaration: DeclarationReflection): readonly DeclarationReflection[] | undefined {
  if (declaration.kind === ReflectionKind.Interface) return declaration.children
  return declaration.type?.type === 'reflection' ? declaration.type.declaration.children : undefined
}

function objectOf(declaration: DeclarationReflection): Signatures['objects'][string] {
  const names = declaration.typeParameters?.map((parameter) => parameter.name)
  return { ...(names === undefined ? {} : { names }), has: hasOf(propertiesOf(declaration) ?? []) }
}

function hasOf(properties: readonly DeclarationReflection[]): Record<string, SignatureType> {
  return Object.fromEntries(
    properties.map((property) => [
      property.name,
      typeOf(property.type ?? property.getSignature?.type, wordsOf(property, 'Unit'), property),
    ]),
  )
}

function functionType(signature: SignatureReflection): SignatureType {
  return {
    takes: (signature.parameters ?? []).map((parameter) => typeOf(parameter.type, wordsOf(parameter, 'Unit'))),
    gives: typeOf(signature.type, /\bUnit: (.+?)\.(?=\s|$)/.exec(returnsOf(signature))?.[1]),
  }
}

function returnsOf(signature: SignatureReflection): string {
  const parts = signature.comment?.getTag('@returns')?.content ?? []
  return parts.map((part) => part.text).join('')
}

function wordsOf(about: { comment?: DeclarationReflection['comment'] }, word: string): string | undefined {
  const text = (about.comment?.summary ?? []).map((part) => part.text).join('')
  return new RegExp(`\\b${word}: (.+?)\\.(?=\\s|$)`).exec(text)?.[1]
}

/** A type as the session needs it; 0 for what holds no quantity. */
function typeOf(type: SomeType | undefined, unit?: string, about?: DeclarationReflection): SignatureType {
  if (about?.signatures?.[0] !== undefined) return functionType(about.signatures[0])
  switch (type?.type) {
    case 'intrinsic':
      return type.name === 'number' && unit !== undefined && !/^(?:any|raw|that of .*)$/.test(unit) ? { unit } : 0
    case 'optional':
    case 'rest':
      return typeOf(type.elementType, unit)
    case 'typeOperator':
      return typeOf(type.target, unit)
    case 'array':
      return listOf(typeOf(type.elementType, unit))
    case 'namedTupleMember':
      return typeOf(type.element, unit)
    case 'tuple':
      return { places: type.elements.map((element) => typeOf(element, unit)) }
    case 'union':
      return unionOf(type.types.map((part) => typeOf(part, unit)))
    case 'intersection':
      return unionOf(type.types.map((part) => typeOf(part, unit)))
    case 'reflection': {
      const [signature] = type.declaration.signatures ?? []
      if (signature !== undefined) return functionType(signature)
      return type.declaration.children ? { has: hasOf(type.declaration.children) } : 0
    }
    case 'indexedAccess':
      return type.toString() === 'KindTypes[K]' ? { named: true } : 0
    case 'reference':
      return referenceOf(type, unit)
    default:
      return 0
  }
}

function referenceOf(type: Extract<SomeType, { type: 'reference' }>, unit: string | undefined): SignatureType {
  const given = type.typeArguments ?? []
  if (/^Float(?:32|64)Array$/.test(type.name)) return unit === undefined ? 0 : { numbers: unit }
  if (/^(?:ArrayLike|ReadonlyArray|Array|Iterable)$/.test(type.name)) return listOf(typeOf(given[0], unit))
  if (/^(?:NoInfer|OneKind|Readonly|Partial|Required)$/.test(type.name)) return typeOf(given[0], unit)
  // What a constructor of several kinds makes is one of them; the place where it is used says which.
  if (type.name === 'Made') return typeOf(given[1], unit)
  if (type.name === 'Record') {
    const each = typeOf(given[1], unit)
    return each === 0 ? 0 : { each }
  }
  const declaration = type.reflection as DeclarationReflection | undefined
  if (declaration?.kind === ReflectionKind.TypeParameter) return { as: type.name }
  if (declaration === undefined || declaration.kind === ReflectionKind.Class) return 0
  return given.length === 0 ? { name: type.name } : { name: type.name, of: given.map((one) => typeOf(one)) }
}

function listOf(each: SignatureType): SignatureType {
  return each === 0 ? 0 : { list: each }
}

function unionOf(parts: readonly SignatureType[]): SignatureType {
  const known = parts.filter((part) => part !== 0)
  return known.length > 1 ? { oneOf: known } : (known[0] ?? 0)
}
