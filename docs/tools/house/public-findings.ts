import ts from 'typescript'
import { visitPublicTypes } from './public-types.js'

/** A number in a public finding. */
export interface FoundNumber {
  readonly where: string
  /** The unit that its comment names; that of `unit` only where the finding must carry one. */
  readonly unit: string | undefined
}

/** Codes in a public type, by the folder of src that declares it. */
export interface PublicCodes {
  readonly where: string
  readonly folder: string
  /** What may stand there; nothing where it is any text. */
  readonly codes: readonly string[]
}

/** The function that puts the findings of a topic into words, and the families of codes that it takes. */
export interface Explainer {
  readonly name: string
  readonly topic: string
  readonly families: readonly (readonly string[])[]
}

/** What the public types say of findings, of results that are not known, and of who explains them. */
export interface PublicFindings {
  readonly numbers: readonly FoundNumber[]
  readonly findings: readonly PublicCodes[]
  /** Every `reason`, and whether it is that of a result with `known: false`. */
  readonly reasons: readonly (PublicCodes & { readonly isUnknown: boolean })[]
  readonly explainers: readonly Explainer[]
}

/** Reads findings, reasons and explainers out of the types of what some modules export. */
export function publicFindings(indexes: readonly string[]): PublicFindings {
  const numbers: FoundNumber[] = []
  const findings: PublicCodes[] = []
  const reasons: (PublicCodes & { readonly isUnknown: boolean })[] = []
  const explainers: Explainer[] = []
  visitPublicTypes(indexes, (checker) => {
    const codesAt = (property: ts.Symbol, where: string): PublicCodes => ({
      where,
      folder: folderOf(property),
      codes: literals(checker.getTypeOfSymbol(property)),
    })
    return {
      exported: ({ name, entry, type }) => {
        if (!/^explain[A-Z]/.test(name)) return
        explainers.push({ name, topic: entry, families: familiesOf(type, checker) })
      },
      object: (_type, properties, where) => {
        const property = (name: string) => properties.find((one) => one.name === name)
        const [code, level, known, reason] = ['code', 'level', 'known', 'reason'].map(property)
        if (code && level) {
          findings.push(codesAt(code, where))
          numbers.push(...numbersOf(properties, where, checker))
        }
        const isUnknown = known !== undefined && checker.typeToString(checker.getTypeOfSymbol(known)) === 'false'
        if (reason) reasons.push({ ...codesAt(reason, where), isUnknown })
        else if (isUnknown) reasons.push({ where, folder: folderOf(known), codes: [], isUnknown })
      },
    }
  })
  return { numbers, findings, reasons, explainers }
}

function numbersOf(properties: readonly ts.Symbol[], where: string, checker: ts.TypeChecker): FoundNumber[] {
  const hasUnit = properties.some((one) => one.name === 'unit' && !(one.flags & ts.SymbolFlags.Optional))
  return properties.flatMap((property) => {
    const type = checker.getNonNullableType(checker.getTypeOfSymbol(property))
    const isNumber = (one: ts.Type) => checker.isTypeAssignableTo(one, checker.getNumberType())
    const each = checker.isArrayType(type) ? checker.getTypeArguments(type as ts.TypeReference)[0]! : type
    if (each.flags & ts.TypeFlags.Never || !isNumber(each)) return []
    const said = ts.displayPartsToString(property.getDocumentationComment(checker))
    const unit = /Unit: (.+?)\.(?:\s|$)/.exec(said)?.[1]
    return [{ where: `${where}.${property.name}`, unit: unit === 'that of `unit`' && !hasUnit ? undefined : unit }]
  })
}

/** The codes of each family that an `explain…` takes: the members of `OneCodeEach<[...]>`, or its one family. */
function familiesOf(explain: ts.Type, checker: ts.TypeChecker): (readonly string[])[] {
  const [parameter] = explain.getCallSignatures()[0]?.parameters ?? []
  if (parameter === undefined) return []
  const type = checker.getTypeOfSymbol(parameter)
  const declared = aliasOf(parameter, checker)?.type
  const list = declared && ts.isTypeReferenceNode(declared) ? declared.typeArguments?.[0] : undefined
  const families =
    list && ts.isTupleTypeNode(list) ? list.elements.map((node) => checker.getTypeFromTypeNode(node)) : [type]
  return families.map((family) => {
    const code = family.isUnion() ? checker.getPropertyOfType(family, 'code') : family.getProperty('code')
    return code === undefined ? [] : literals(checker.getTypeOfSymbol(code))
  })
}

/** The alias by which the type of a parameter is written. */
function aliasOf(parameter: ts.Symbol, checker: ts.TypeChecker): ts.TypeAliasDeclaration | undefined {
  const written = (parameter.valueDeclaration as ts.ParameterDeclaration).type
  const named = written && ts.isTypeReferenceNode(written) ? checker.getSymbolAtLocation(written.typeName) : undefined
  const symbol = named && named.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(named) : named
  return symbol?.declarations?.find(ts.isTypeAliasDeclaration)
}

function literals(type: ts.Type): string[] {
  const parts = type.isUnion() ? type.types : [type]
  return parts.every((part) => part.isStringLiteral()) ? parts.map((part) => (part as ts.StringLiteralType).value) : []
}

function folderOf(property: ts.Symbol): string {
  return /\/src\/([^/]+)\//.exec(property.declarations?.[0]?.getSourceFile().fileName ?? '')?.[1] ?? ''
}
