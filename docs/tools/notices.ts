/**
 * Writes THIRD-PARTY-NOTICES.md: the packages whose code is inside the built files, with their licences. `-- --check` only compares.
 * What is inside is asked of the bundler, so that a new import cannot be forgotten.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = fileURLToPath(new URL('../../', import.meta.url))
const TARGET = `${root}THIRD-PARTY-NOTICES.md`

/** The files of the package that hold code of others, with what each leaves outside. */
const BUNDLES = [
  { file: 'dist/porewater.iife.js', entry: 'src/index.ts', external: [] },
  { file: 'dist/porewater-text-chart.iife.js', entry: 'docs/tools/text-chart-bundle.ts', external: [] },
  { file: 'dist/repl/bin.js', entry: 'src/repl/bin.ts', external: ['mathjs'] },
]

/** For each package inside the built files the files that hold it. */
export async function packagesInside(): Promise<Map<string, string[]>> {
  const inside = new Map<string, string[]>()
  for (const { file, entry, external } of BUNDLES) {
    const { metafile } = await build({
      absWorkingDir: root,
      entryPoints: [entry],
      bundle: true,
      metafile: true,
      write: false,
      format: 'esm',
      platform: entry.includes('repl') ? 'node' : 'neutral',
      mainFields: ['module', 'main'],
      external,
    })
    const used = Object.values(metafile.outputs).flatMap(({ inputs }) =>
      Object.entries(inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
    )
    const names = used.map((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? '')
    for (const name of new Set(names)) if (name !== '') inside.set(name, [...(inside.get(name) ?? []), file])
  }
  return inside
}

export async function notices(): Promise<string> {
  const inside = [...(await packagesInside())].sort(([a], [b]) => (a < b ? -1 : 1))
  const parts = inside.map(([name, files]) => {
    const folder = `${root}node_modules/${name}`
    const { license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'))
    const text = readdirSync(folder).find((one) => /^licen[cs]e/i.test(one))
    if (text === undefined || !existsSync(`${folder}/${text}`)) throw new Error(`${name} brings no licence text`)
    const words = readFileSync(`${folder}/${text}`, 'utf8').replace(/\r/g, '').trim()
    return `## ${name}\n\n${license}, in ${files.map((file) => `\`${file}\``).join(' and ')}.\n\n\`\`\`text\n${words}\n\`\`\`\n`
  })
  return `# Third-party notices

porewater itself stands under the licence in [LICENSE](LICENSE). These files of the package also hold code of others; every other file
holds none. Written by \`npm run notices\`.

${parts.join('\n')}`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const now = await notices()
  if (!process.argv.includes('--check')) writeFileSync(TARGET, now)
  else if (readFileSync(TARGET, 'utf8') !== now) throw new Error('THIRD-PARTY-NOTICES.md is old: npm run notices')
}
