/**
 * Runs every benchmark of this folder in one process: `npm run bench`, `npm run bench -- --quick`, `npm run bench -- shot`.
 * `npm run bench -- --document` also writes what was printed to docs/benchmarks.md, with the machine and the versions.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { cpus, totalmem } from 'node:os'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'

const here = fileURLToPath(new URL('.', import.meta.url))
const { values, positionals: words } = parseArgs({
  allowPositionals: true,
  options: { quick: { type: 'boolean', default: false }, document: { type: 'boolean', default: false } },
})
const { quick, document } = values

let printed = ''
const write = process.stdout.write.bind(process.stdout)
process.stdout.write = ((text: string) => {
  printed += text
  return write(text)
}) as typeof process.stdout.write

process.stdout.write(
  `Node ${process.version}; medians, half the distance between the quartiles, and ratios to the first line, of runs in turn.\n\n`,
)
const files = readdirSync(here)
  .filter((file) => file.endsWith('.bench.ts') && (words.length === 0 || words.some((word) => file.includes(word))))
  .sort()
if (files.length === 0) throw new Error(`no benchmark has ${words.join(' or ')} in its name`)
for (const file of files) {
  const { run } = (await import(`./${file}`)) as { run: (quick: boolean, alone: boolean) => void | Promise<void> }
  await run(quick, files.length === 1)
}
if (document) writeFileSync(fileURLToPath(new URL('../docs/benchmarks.md', import.meta.url)), page(printed))

function page(output: string): string {
  const [cpu] = cpus()
  const versionOf = (name: string): string =>
    JSON.parse(readFileSync(fileURLToPath(new URL(`../node_modules/${name}/package.json`, import.meta.url)), 'utf8'))
      .version
  return `# Benchmarks

Made by \`npm run bench -- --document\` in one run; do not edit. Times belong to one machine and differ on yours; the ratios to a loop
by hand or to another library in the same run are what travels.

| | |
| --- | --- |
| processor | ${cpus().length} × ${cpu?.model ?? 'unknown'} |
| memory | ${(totalmem() / 2 ** 30).toFixed(0)} GiB |
| Node, V8 | ${process.version}, ${process.versions.v8} |
| mathjs, js-quantities | ${versionOf('mathjs')}, ${versionOf('js-quantities')} |

\`\`\`text
${output.trim()}
\`\`\`
`
}
