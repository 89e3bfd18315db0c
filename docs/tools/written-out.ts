/**
 * Documentation as its reader sees it, in the types of the built package and on the pages. The sources say only what is particular: works
 * are cited by key, equations and examples carry no fences, and the catalogue knows what an options object is from its type, and that
 * numbers outside their ranges are refused.
 */
import { Comment, CommentTag, type ProjectReflection, ReflectionKind, type SignatureReflection } from 'typedoc'
import type { CatalogueEntry } from '../../src/catalogue/entry.js'
import { sourceInFull } from '../../src/catalogue/source-in-full.js'

type Entries = ReadonlyMap<string, CatalogueEntry>

export function byName(entries: readonly CatalogueEntry[]): Entries {
  return new Map(entries.map((entry) => [entry.name, entry]))
}

/** The text of a file of types with all its documentation written out. */
export function writtenOut(types: string, entries: Entries): string {
  return types.replace(
    /( *)\/\*\*(?:(?!\*\/)[\s\S])*\*\/(?=\s*(?:export )?(?:declare )?(?:function (\w+))?)/g,
    (comment: string, indent: string, name: string | undefined) => {
      const star = `${indent} * `
      const entry = name === undefined ? undefined : entries.get(name)
      const complete = entry === undefined ? comment : withOmitted(comment, entry, star)
      return citedInFull(withExampleFences(withEquation(complete, star), star))
    },
  )
}

/** Documentation with every `@source` in full. Each tag stands on one line. */
export function citedInFull(comment: string): string {
  return comment.replace(
    /(@source )(.+?)(?= *\*\/|$)/gm,
    (_, tag: string, source: string) => tag + sourceInFull(source),
  )
}

/** The equation behind the first paragraph, as Markdown shows it. */
function withEquation(comment: string, star: string): string {
  const equations: string[] = []
  const rest = comment.replace(/^ *\* @equation `([^`]*)`\n/gm, (_, equation: string) => {
    equations.push(`${star}\`\`\`math\n${star}${equation}\n${star}\`\`\`\n${star.trimEnd()}\n`)
    return ''
  })
  return rest.replace(/^ *\*\n/m, (gap) => gap + equations.join(''))
}

function withExampleFences(comment: string, star: string): string {
  return comment.replace(
    /(@example\n)(?! *\* ```)((?:(?! *\* @| *\*\/).*\n)+)/g,
    (_, tag: string, code: string) => `${tag}${star}\`\`\`ts\n${code}${star}\`\`\`\n`,
  )
}

/** The comment of a function with the parameters and the refusal that its source leaves to the catalogue. */
function withOmitted(comment: string, { arguments: fields, throws }: CatalogueEntry, star: string): string {
  const params = fields
    .filter(({ path }) => /^\w+$/.test(path) && !new RegExp(`@param ${path} `).test(comment))
    .map(({ path, text }) => `${star}@param ${path} - ${text}\n`)
  const described = comment.replace(/^ *\* @returns/m, (tag) => params.join('') + tag)
  if (throws === '' || /^ *\* @throws/m.test(comment)) return described
  return described.replace(/^ *\* @(validity|source)/m, (tag) => `${star}@throws ${throws}\n${tag}`)
}

/** The same for what TypeDoc has read. */
export function writeOut(project: ProjectReflection, entries: Entries): void {
  for (const reflection of Object.values(project.reflections)) {
    const { comment } = reflection
    for (const tag of comment?.getTags('@source') ?? [])
      for (const part of tag.content) if (part.kind === 'text') part.text = sourceInFull(part.text)
    const entry = reflection.kindOf(ReflectionKind.CallSignature) ? entries.get(reflection.name) : undefined
    if (comment !== undefined && entry !== undefined) complete(reflection as SignatureReflection, comment, entry)
  }
}

function complete(
  signature: SignatureReflection,
  comment: Comment,
  { arguments: fields, throws }: CatalogueEntry,
): void {
  for (const parameter of signature.parameters ?? [])
    parameter.comment ??= new Comment([
      { kind: 'text', text: fields.find(({ path }) => path === parameter.name)?.text ?? '' },
    ])
  const equations = comment.getTags('@equation').map(({ content }) => content.map(({ text }) => text.trim()).join(''))
  comment.removeTags('@equation')
  insertEquations(comment, equations)
  if (throws === '' || comment.getTag('@throws') !== undefined) return
  const at = comment.blockTags.findIndex(({ tag }) => tag === '@validity' || tag === '@source')
  comment.blockTags.splice(at, 0, new CommentTag('@throws', [{ kind: 'text', text: throws }]))
}

function insertEquations(comment: Comment, equations: readonly string[]): void {
  if (equations.length === 0) return
  const fences = equations.map((code) => `\`\`\`math\n${code.replace(/^`|`$/g, '')}\n\`\`\``).join('\n\n')
  const at = comment.summary.findIndex(({ kind, text }) => kind === 'text' && text.includes('\n\n'))
  const part = comment.summary[at]
  if (part === undefined) {
    comment.summary.push({ kind: 'text', text: '\n\n' }, { kind: 'code', text: fences })
    return
  }
  const [first, ...rest] = part.text.split('\n\n')
  comment.summary.splice(
    at,
    1,
    { kind: 'text', text: `${first}\n\n` },
    { kind: 'code', text: fences },
    { kind: 'text', text: `\n\n${rest.join('\n\n')}` },
  )
}
