import { execFileSync, spawn } from 'node:child_process'
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

interface Place {
  readonly file: string
  readonly start: { readonly line: number; readonly offset: number }
}

/** Where an editor goes from places in a file: the answers of the language server that comes with the compiler. */
async function definitions(
  file: string,
  places: readonly (readonly [line: number, offset: number])[],
): Promise<Place[]> {
  const server = spawn(process.execPath, [
    join(root, 'node_modules/typescript/lib/tsserver.js'),
    '--disableAutomaticTypingAcquisition',
  ])
  try {
    const ask = (seq: number, command: string, words: object) =>
      server.stdin.write(`${JSON.stringify({ seq, type: 'request', command, arguments: { file, ...words } })}\n`)
    ask(0, 'open', {})
    for (const [i, [line, offset]] of places.entries()) ask(i + 1, 'definition', { line, offset })
    const found: Place[] = []
    let heard = ''
    for await (const part of server.stdout) {
      heard += part
      for (const [, text = ''] of heard.matchAll(/^(\{.*"type":"response".*\})$/gm)) {
        const { request_seq: asked, body } = JSON.parse(text)
        if (asked > 0 && body?.[0] !== undefined) found[asked - 1] = body[0]
      }
      if (places.every((_, i) => found[i] !== undefined)) break
    }
    return found
  } finally {
    server.kill()
  }
}

const CODE = `import { litres, percent, planDay, shotVolume, type Volume, waterContentChange } from 'porewater'
import { fitCalibration } from 'porewater/probe'
export const shot: Volume = shotVolume({ substrateVolume: litres(10), rise: waterContentChange(0.02), drainFraction: percent(20) })
export const plan = planDay
export const fit = fitCalibration
`

it('"go to definition" ends in the source of a function, a constructor, a kind and an argument', async () => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'porewater-editor-')))
  try {
    mkdirSync(join(folder, 'node_modules'))
    symlinkSync(root, join(folder, 'node_modules/porewater'))
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
    writeFileSync(
      join(folder, 'tsconfig.json'),
      '{ "compilerOptions": { "strict": true, "module": "nodenext", "types": [] } }',
    )
    writeFileSync(join(folder, 'a.ts'), CODE)
    const lines = CODE.split('\n')
    const wanted = ['shotVolume(', 'litres(10', 'percent(20', 'Volume =', 'rise:', 'planDay', 'fitCalibration']
    const places = wanted.map((word) => {
      const line = lines.map((text) => text.includes(word)).lastIndexOf(true)
      return [line + 1, lines[line]!.lastIndexOf(word) + 1] as const
    })
    const found = await definitions(join(folder, 'a.ts'), places)
    const told = found.map(({ file, start }) => {
      const path = relative(root, file)
      const line = readFileSync(file, 'utf8').split('\n')[start.line - 1] ?? ''
      return [path, /\w+/.exec(line.slice(start.offset - 1))?.[0]]
    })
    expect(told).toEqual([
      ['src/irrigation/shot/shot-volume.ts', 'shotVolume'],
      ['src/quantity/generated/volume.ts', 'litres'],
      ['src/quantity/generated/share.ts', 'percent'],
      ['src/quantity/generated/kinds.ts', 'Volume'],
      [expect.stringMatching(/^src\/irrigation\/.*\.ts$/), 'rise'],
      ['src/irrigation/plan/plan-day.ts', 'planDay'],
      ['src/probe/fit-calibration.ts', 'fitCalibration'],
    ])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}, 120_000)

it('every map leads to files that ship', () => {
  const [{ files }] = JSON.parse(
    execFileSync('npm', ['pack', '--dry-run', '--json'], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  ) as [{ files: { path: string }[] }]
  const shipped = new Set(files.map(({ path }) => path))
  const typings = [...shipped].filter((path) => /\.d\.c?ts$/.test(path))
  expect(typings.length).toBeGreaterThan(100)
  const missing = typings.flatMap((path) => {
    if (!readFileSync(join(root, path), 'utf8').endsWith(`//# sourceMappingURL=${path.split('/').at(-1)}.map\n`))
      return [path]
    const { sources } = JSON.parse(readFileSync(join(root, `${path}.map`), 'utf8')) as { sources: string[] }
    return sources.map((source) => join(dirname(path), source)).filter((source) => !shipped.has(source))
  })
  expect(missing).toEqual([])
  expect(readdirSync(join(root, 'dist')).filter((name) => name.endsWith('.d.ts.map')).length).toBeGreaterThan(0)
}, 60_000)
