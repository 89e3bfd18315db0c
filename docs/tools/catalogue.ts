/**
 * Writes src/catalogue/entries.json from the TSDoc of the public functions, and src/repl/signatures.json from their types. TypeDoc reads the sources; what is kept here is
 * only what help, formula sheet, explorer and the completeness test need. Where all that they were made from is as it was, both stay.
 */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  Application,
  type Comment,
  type CommentDisplayPart,
  type DeclarationReflection,
  type ParameterReflection,
  type ProjectReflection,
  ReflectionKind,
  type SignatureReflection,
  type SomeType,
} from 'typedoc'
import type { CatalogueEntry, CatalogueField } from '../../src/catalogue/entry.js'
import { type FoundProperty, findingProperties } from './finding-properties.js'
import { signaturesOf } from './signatures.js'
import { topics } from './topics.js'
import { digestsOf } from './units/digests.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const target = `${root}src/catalogue/entries.json`
const types = `${root}src/repl/signatures.json`
const kept = `${root}out/catalogue.sha256`

/** What the documentation of a function is made of; DEVELOPERS.md says what stands behind each. */
export const BLOCK_TAGS: `@${string}`[] = [
  '@equation',
  '@procedure',
  '@param',
  '@returns',
  '@throws',
  '@validity',
  '@source',
  '@example',
  '@typeParam',
  '@see',
]

export async function readProject(): Promise<ProjectReflection> {
  const app = await Application.bootstrap({
    entryPoints: topics().map((topic) => `${root}src/${topic}/index.ts`),
    tsconfig: `${root}tsconfig.json`,
    skipErrorChecking: true,
    excludePrivate: true,
    disableGit: true,
    sourceLinkTemplate: '{path}',
    logLevel: 'Error',
    blockTags: BLOCK_TAGS,
  })
  const project = await app.convert()
  if (project === undefined) throw new Error('TypeDoc could not read the sources')
  return project
}

export function describe(project: ProjectReflection): CatalogueEntry[] {
  const entries: CatalogueEntry[] = []
  for (const topic of project.children ?? []) {
    for (const declaration of topic.children ?? []) {
      if (declaration.kind !== ReflectionKind.Function) continue
      const [signature] = declaration.signatures ?? []
      if (signature !== undefined) entries.push(describeFunction(topicName(topic.name), signature))
    }
  }
  // Functions of a topic share arguments: side by side they take a sixth less room in a page.
  const place = ({ topic, name }: CatalogueEntry) => `${topic} ${name}`
  return entries.sort((a, b) => (place(a) < place(b) ? -1 : 1))
}

function topicName(moduleName: string): string {
  return moduleName.replace(/^.*src\//, '').replace(/\/index$/, '')
}

function describeFunction(topic: string, signature: SignatureReflection): CatalogueEntry {
  const comment = signature.comment
  const words = comment ? text(comment.summary) : ''
  const fenced = [...words.matchAll(/```math\n([\s\S]*?)\n```/g)].map((match) => match[1])
  const equations = (comment?.getTags('@equation') ?? []).map(({ content }) => text(content).trim().slice(1, -1))
  const fields = (signature.parameters ?? []).flatMap((parameter) => fieldsOfParameter(parameter))
  const prose = words
    .replace(/```math\n[\s\S]*?\n```/g, '')
    .replace(/\n{3,}/g, '\n\n')
    .trim()
  const [first = '', ...rest] = prose.split('\n\n')
  const end = /\.(?=\s|$)/.exec(first)
  const summary = end ? first.slice(0, end.index + 1) : first
  return {
    name: signature.name,
    topic,
    summary: oneLine(summary),
    description: [first.slice(summary.length).trim(), ...rest].filter(Boolean).join('\n\n'),
    equation: [...fenced, ...equations].join('\n'),
    procedure: tag(comment, '@procedure'),
    arguments: fields,
    result: result(signature),
    throws: tag(comment, '@throws') || refusal(fields),
    validity: tag(comment, '@validity'),
    sources: tags(comment, '@source'),
    example: tags(comment, '@example')
      .join('\n')
      .replace(/^```ts\n|\n```$/gm, '')
      .trim(),
  }
}

/** What every function says of a number outside its range, so that none has to write it. */
function refusal(fields: readonly CatalogueField[]): string {
  const guarded = fields.filter(({ shape, range = 'any' }) => shape !== 'other' && !/^any\b/.test(range))
  return guarded.length === 0 ? '' : `\`DomainError\` outside the range${guarded.length > 1 ? 's' : ''}.`
}

function fieldsOfParameter(parameter: ParameterReflection): CatalogueField[] {
  const optional = parameter.flags.isOptional || parameter.defaultValue !== undefined
  const words = text(parameter.comment?.summary ?? []) || wordsOfType(parameter.type)
  return fields(parameter.name, parameter.type, words, optional, [])
}

/** What the type of an options object says it is. */
function wordsOfType(type: SomeType | undefined): string {
  const declaration = type?.type === 'reference' ? (type.reflection as DeclarationReflection | undefined) : undefined
  return text(declaration?.comment?.summary ?? [])
}

function result(signature: SignatureReflection): CatalogueEntry['result'] {
  const words = tag(signature.comment, '@returns')
  const inner = fields('', signature.type, '', false, []).filter((field) => field.path !== '')
  return {
    ...split(words),
    type: signature.type?.toString() ?? 'void',
    shape: shapeOf(signature.type),
    fields: inner.map((field) => ({ ...field, path: field.path.replace(/^\./, '') })),
  }
}

/** The field itself, or in place of an object the fields of its properties. */
function fields(
  path: string,
  type: SomeType | undefined,
  words: string,
  optional: boolean,
  above: readonly unknown[],
): CatalogueField[] {
  const shape = shapeOf(type)
  const own: CatalogueField = {
    path,
    type: type?.toString() ?? 'unknown',
    ...split(words),
    ...(optional ? { optional } : {}),
    shape,
  }
  if (shape !== 'other') return [own]
  // A finding that is given back is one of many: all their properties are listed.
  if (path === 'finding')
    return [own, ...findingProperties(type).flatMap((one) => inner(`${path}.${one.name}`, one, optional, [type]))].map(
      (field) => (field.shape === 'other' ? field : { range: 'any', ...field }),
    )
  const properties = above.length < 3 ? propertiesOf(type) : undefined
  if (properties === undefined || properties.length === 0 || above.includes(properties)) return [own]
  const all = properties.flatMap((property) => {
    const found = {
      type: property.type ?? property.getSignature?.type,
      comment: property.comment ?? property.getSignature?.comment,
      optional: property.flags.isOptional,
    }
    return inner(`${path}.${property.name}`, found, optional, [...above, properties])
  })
  return path === '' ? all : [own, ...all]
}

/** The fields of a property. */
function inner(
  path: string,
  { type, comment, optional }: Omit<FoundProperty, 'name'>,
  above: boolean,
  within: readonly unknown[],
): CatalogueField[] {
  return fields(path, type, text(comment?.summary ?? []), above || optional, within)
}

function propertiesOf(type: SomeType | undefined): DeclarationReflection[] | undefined {
  if (type === undefined) return undefined
  if (type.type === 'optional' || type.type === 'rest') return propertiesOf(type.elementType)
  if (type.type === 'typeOperator') return propertiesOf(type.target)
  if (type.type === 'reflection') return type.declaration.signatures ? undefined : type.declaration.children
  if (type.type === 'intersection') return type.types.flatMap((part) => propertiesOf(part) ?? [])
  if (type.type === 'union') {
    const parts = type.types.filter((part) => !(part.type === 'intrinsic' && part.name === 'undefined'))
    return parts.length === 1 ? propertiesOf(parts[0]) : undefined
  }
  if (type.type !== 'reference') return undefined
  if ((type.name === 'Readonly' || type.name === 'Partial') && type.typeArguments)
    return propertiesOf(type.typeArguments[0])
  const declaration = type.reflection as DeclarationReflection | undefined
  if (declaration === undefined || declaration.kind === ReflectionKind.Class) return undefined
  if (declaration.kind === ReflectionKind.Interface) return declaration.children
  return declaration.kind === ReflectionKind.TypeAlias ? propertiesOf(declaration.type) : undefined
}

function shapeOf(type: SomeType | undefined): CatalogueField['shape'] {
  if (type === undefined) return 'other'
  if (isNumber(type)) return 'number'
  if (type.type === 'typeOperator') return shapeOf(type.target)
  if (type.type === 'array') return isNumber(type.elementType) ? 'list' : 'other'
  if (
    type.type === 'reference' &&
    ['Float64Array', 'Float32Array', 'ArrayLike', 'ReadonlyArray', 'Iterable'].includes(type.name)
  ) {
    const [element] = type.typeArguments ?? []
    return type.name.startsWith('Float') || (element !== undefined && isNumber(element)) ? 'list' : 'other'
  }
  if (type.type === 'union') {
    const parts = type.types.filter((part) => !(part.type === 'intrinsic' && part.name === 'undefined'))
    const shapes = new Set(parts.map(shapeOf))
    return shapes.size === 1 ? [...shapes][0]! : 'other'
  }
  return 'other'
}

function isNumber(type: SomeType): boolean {
  if (type.type === 'intrinsic') return type.name === 'number'
  if (type.type === 'intersection') return type.types.some(isNumber)
  if (type.type === 'union') {
    const parts = type.types.filter((part) => !(part.type === 'intrinsic' && part.name === 'undefined'))
    return parts.length > 0 && parts.every(isNumber)
  }
  if (type.type !== 'reference') return false
  if (type.name === 'NoInfer' && type.typeArguments?.[0]) return isNumber(type.typeArguments[0])
  const declaration = type.reflection as (DeclarationReflection & { type?: SomeType }) | undefined
  if (declaration?.kind === ReflectionKind.TypeParameter)
    return declaration.type !== undefined && isNumber(declaration.type)
  return declaration?.kind === ReflectionKind.TypeAlias && declaration.type !== undefined && isNumber(declaration.type)
}

/** Takes `Unit: X.` and `Range: Y.` out of a description. */
function split(words: string): { text: string; unit?: string; range?: string } {
  const unit = /\bUnit: (.+?)\.(?=\s|$)/.exec(words)
  const range = /\bRange: (.+?)\.(?=\s|$)/.exec(words)
  const rest = words.replace(unit?.[0] ?? '', '').replace(range?.[0] ?? '', '')
  return {
    text: oneLine(rest),
    ...(unit?.[1] ? { unit: unit[1] } : {}),
    ...(range?.[1] ? { range: oneLine(range[1]) } : {}),
  }
}

function text(parts: readonly CommentDisplayPart[]): string {
  return parts.map((part) => part.text).join('')
}

function tags(comment: Comment | undefined, name: `@${string}`): string[] {
  return (comment?.getTags(name) ?? []).map((block) => {
    const words = text(block.content).trim()
    return name === '@example' ? words : oneLine(words)
  })
}

function tag(comment: Comment | undefined, name: `@${string}`): string {
  return tags(comment, name).join(' ')
}

function oneLine(words: string): string {
  return words.replace(/\s+/g, ' ').trim()
}

if (
  process.argv[1] === fileURLToPath(import.meta.url) &&
  !(process.argv.includes('--if-missing') && existsSync(target) && existsSync(types))
) {
  if (existsSync(target) && existsSync(kept) && readFileSync(kept, 'utf8') === digest()) {
    const entries = JSON.parse(readFileSync(target, 'utf8')) as readonly CatalogueEntry[]
    process.stdout.write(`${entries.length} functions in the catalogue, as before\n`)
  } else await write()
}

async function write(): Promise<void> {
  // The catalogue's own index imports the file that is being made.
  if (!existsSync(target)) writeFileSync(target, '[]\n')
  const project = await readProject()
  const entries = describe(project)
  writeFileSync(target, `[\n${entries.map((entry) => JSON.stringify(entry)).join(',\n')}\n]\n`)
  writeFileSync(types, `${JSON.stringify(signaturesOf(project))}\n`)
  mkdirSync(dirname(kept), { recursive: true })
  writeFileSync(kept, digest())
  process.stdout.write(`${entries.length} functions in the catalogue\n`)
}

/** Of the sources, what was made of them, the tools that make it, and the versions of what these use. */
function digest(): string {
  const all = createHash('sha256')
  for (const folder of ['src', 'docs/tools'])
    for (const [path, bytes] of [...digestsOf(`${root}${folder}`)].sort()) all.update(`${folder}/${path} ${bytes}\n`)
  for (const file of ['tsconfig.json', 'package.json', 'package-lock.json'])
    if (existsSync(`${root}${file}`)) all.update(readFileSync(`${root}${file}`))
  return all.digest('hex')
}
