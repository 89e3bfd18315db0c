import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type PublicCodes, type PublicFindings, publicFindings } from '../../docs/tools/house/public-findings.js'
import { publicIndexes } from '../../docs/tools/house/public-types.js'
import { parse, root, sourceFiles } from '../../docs/tools/house/source-files.js'
import { publicNames } from '../../docs/tools/public-names.js'

/** Numbers of findings whose unit nobody says. */
function withoutUnit({ numbers }: PublicFindings): string[] {
  return numbers.filter(({ unit }) => unit === undefined).map(({ where }) => where)
}

const CODE = /^[a-z0-9]+(-[a-z0-9]+)*$/
const nameFor = (topic: string) => `explain${topic[0]!.toUpperCase()}${topic.slice(1)}Finding`

/** Reasons of which a program cannot tell what they may be, or which are sentences. */
function proseReasons({ reasons }: PublicFindings): string[] {
  const isCoded = ({ codes }: PublicCodes) => codes.length > 0 && codes.every((code) => CODE.test(code))
  return reasons.filter((reason) => !isCoded(reason)).map(({ where }) => where)
}

/** Functions that explain beside the one of their topic, or under another name. */
function strayExplainers({ explainers }: PublicFindings): string[] {
  return explainers.filter(({ name, topic }) => name !== nameFor(topic)).map(({ name }) => name)
}

/** Codes that stand in two families of a topic. */
function sharedCodes({ explainers }: PublicFindings): string[] {
  return explainers.flatMap(({ families }) => {
    const all = families.flatMap((family) => [...new Set(family)])
    return all.filter((code, i) => all.indexOf(code) !== i)
  })
}

/**
 * Findings and reasons that the function of their topic does not take. What has the shape of all coded findings says only by its codes
 * of which topic it is.
 */
function unexplained({ findings, reasons, explainers }: PublicFindings): string[] {
  const isTaken = ({ folder, codes }: PublicCodes) =>
    explainers.some((one) => {
      const known = one.families.flat()
      return (folder === 'quantity' || folder === one.topic) && codes.every((code) => known.includes(code))
    })
  return [...findings, ...reasons].filter((one) => !isTaken(one)).map(({ folder, codes }) => `${folder}: ${codes}`)
}

/** Codes of unions that no code gives: those of a type whose name says that it is one of codes, and texts that stand as values. */
function neverGiven(files: readonly { readonly path: string; readonly code: string }[]): string[] {
  const unions: { readonly where: string; readonly code: string }[] = []
  const given = new Set<string>()
  for (const { path, code } of files) {
    const visit = (node: ts.Node, alias: string | undefined): void => {
      const name = ts.isTypeAliasDeclaration(node) && /(Code|Reason|BandName|Band)$/.test(node.name.text)
      const within = name ? node.name.text : alias
      if (ts.isStringLiteral(node) && ts.isLiteralTypeNode(node.parent)) {
        if (within !== undefined) unions.push({ where: `${within} '${node.text}'`, code: node.text })
      } else if (ts.isStringLiteral(node) && !ts.isPropertyAssignment(node.parent)) given.add(node.text)
      else if (ts.isStringLiteral(node) && (node.parent as ts.PropertyAssignment).initializer === node)
        given.add(node.text)
      node.forEachChild((child) => visit(child, within))
    }
    visit(parse(path, code), undefined)
  }
  return unions.filter(({ code }) => !given.has(code)).map(({ where }) => where)
}

describe('unions of codes', () => {
  it('hold no code that nothing gives', () => {
    expect(neverGiven(sourceFiles())).toEqual([])
  })
  it('would be refused with one, even where it has words', () => {
    const code = "type RainReason = 'dry' | 'wet'\nconst WORDS = { dry: 'a', 'wet': 'b' }\nconst now = 'dry'"
    expect(neverGiven([{ path: 'src/x/y.ts', code }])).toEqual(["RainReason 'wet'"])
  })
})

describe('findings of the public types', () => {
  let found: PublicFindings
  let faulty: PublicFindings
  const folder = mkdtempSync(join(root, 'tests/house/findings-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  beforeAll(() => {
    found = publicFindings(publicIndexes())
    const path = join(folder, 'index.ts')
    writeFileSync(path, FAULTS)
    faulty = publicFindings([path])
  }, 180_000)

  it('name the unit of every number', () => {
    expect(found.numbers.length).toBeGreaterThan(100)
    expect(withoutUnit(found)).toEqual([])
  })
  it('would be refused with a number that has no unit, or the unit of a finding that may leave it out', () => {
    expect(withoutUnit(faulty).map((where) => where.split('.')[1])).toEqual(['bare', 'value', 'each'])
  })

  it('and results that are not known say why by a code', () => {
    expect(found.reasons.filter(({ isUnknown }) => isUnknown).length).toBeGreaterThan(15)
    expect(proseReasons(found)).toEqual([])
    expect(proseReasons(faulty).map((where) => where.split(' ')[1])).toEqual(['Prose', 'Sentence', 'Silent'])
  })
  it('are explained by one function of each topic, which is named after it', () => {
    expect(found.explainers.length).toBeGreaterThan(10)
    expect(strayExplainers(found)).toEqual([])
    expect(strayExplainers(faulty)).toContain('explainOther')
  })
  it('have codes of their own within a topic', () => {
    expect(found.explainers.find(({ topic }) => topic === 'control')?.families.length).toBeGreaterThan(4)
    expect(sharedCodes(found)).toEqual([])
    expect(sharedCodes(faulty)).toEqual(['loose'])
  })
  it('and reasons all have words in the function of their topic', () => {
    expect(unexplained(found)).toEqual([])
    expect(unexplained({ ...found, reasons: faulty.reasons.map((one) => ({ ...one, folder: 'zone' })) })).toContain(
      'zone: no-words',
    )
  })
  it('are taken by these functions in truth', () => {
    for (const { name, topic } of found.explainers) {
      const reasons = found.reasons.filter(({ folder }) => folder === topic).flatMap(({ codes }) => codes)
      for (const code of reasons) {
        const explain = publicNames[name] as (reason: object) => { message: string }
        expect(explain({ code, waterContent: 0.5 }).message, code).toMatch(/\w{2,}\W+\w{2,}/)
      }
    }
  })
})

const FAULTS = `
export interface Bare {
  readonly code: 'bare'
  readonly level: 'note'
  /** So much. */
  readonly bare: number
}
export interface Loose {
  readonly code: 'loose'
  readonly level: 'note'
  /** So much. Unit: that of \`unit\`. */
  readonly value: number
  readonly unit?: string
}
export interface Lists {
  readonly code: 'lists'
  readonly level: 'note'
  readonly each: readonly number[]
}
export interface Whole {
  readonly code: 'whole'
  readonly level: 'note'
  /** So long. Unit: s. */
  readonly time: number
}
export type Prose = { readonly known: true } | { readonly known: false; readonly reason: string }
export type Sentence = { readonly known: true } | { readonly known: false; readonly reason: 'the record ends' }
export type Silent = { readonly known: true } | { readonly known: false }
export type Unsaid = { readonly known: true } | { readonly known: false; readonly reason: 'no-words' }
type Both<Families extends readonly unknown[]> = Families[number]
export type Mixed = Both<[Bare, Loose, Loose | Whole]>
export function explainOther(finding: Mixed): string
`
