import { execFileSync, spawnSync } from 'node:child_process'
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const OPTIONAL = ['mathjs', 'zod', 'd3-scale', 'd3-shape']
let folder = ''

const packed = () => JSON.parse(readFileSync(join(folder, 'node_modules/porewater/package.json'), 'utf8'))
const commandFile = (): string => packed().bin.porewater

/** Runs a program in the consumer's folder and gives what it printed; a failure shows what it said. */
function run(program: string, ...args: string[]): string {
  try {
    return execFileSync(program, args, { cwd: folder, encoding: 'utf8', stdio: 'pipe' })
  } catch (error) {
    const { stdout, stderr } = error as { stdout: string; stderr: string }
    throw new Error(`${program} ${args.join(' ')} failed:\n${stdout}\n${stderr}`)
  }
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-consumer-'))
  const [{ filename }] = JSON.parse(
    execFileSync('npm', ['pack', '--json', '--pack-destination', folder], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  )
  writeFileSync(join(folder, 'package.json'), '{}')
  // npm itself lays the package and its command; out of reach of a registry it leaves the optional packages out.
  run('npm', 'install', '--offline', '--omit=optional', '--no-audit', '--no-fund', '--no-package-lock', `./${filename}`)
  // What it may depend on, as npm lays it; nothing else is in reach.
  for (const dependency of OPTIONAL) {
    symlinkSync(join(root, 'node_modules', dependency), join(folder, 'node_modules', dependency))
  }
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The command as npm laid it, with something piped into it: how it ended and what it said. */
function porewater(words: string[], input: string) {
  const { status, stdout, stderr } = spawnSync(join(folder, 'node_modules/.bin/porewater'), words, {
    cwd: folder,
    input,
    encoding: 'utf8',
  })
  return { status, stdout, stderr }
}

const program = (imports: string) => `${imports}
const theta = waterContentTopp1980(permittivity(20))
if (Math.abs(theta - 0.3454) > 1e-12) throw new Error(String(theta))
try { litres(-1); throw new Error('not refused') } catch (error) { if (error.code !== 'outside-domain') throw error }
console.log('ok')`

describe('the packed package in an empty folder', () => {
  it('is imported as ESM', () => {
    writeFileSync(
      join(folder, 'a.mjs'),
      program(`import { waterContentTopp1980, permittivity, litres } from 'porewater'`),
    )
    expect(run('node', 'a.mjs')).toBe('ok\n')
  })
  it('is required as CJS, by topic too', () => {
    writeFileSync(
      join(folder, 'b.cjs'),
      program(
        `const { waterContentTopp1980 } = require('porewater/dielectric')\nconst { permittivity, litres } = require('porewater')`,
      ),
    )
    expect(run('node', 'b.cjs')).toBe('ok\n')
  })
  it('works without the optional packages, but for what needs them', () => {
    const lean = mkdtempSync(join(tmpdir(), 'porewater-lean-'))
    try {
      mkdirSync(join(lean, 'node_modules'))
      cpSync(join(folder, 'node_modules/porewater'), join(lean, 'node_modules/porewater'), { recursive: true })
      const node = (...args: string[]) => spawnSync('node', args, { cwd: lean, encoding: 'utf8' })
      const use = "console.log(litres(2), parseQuantity('3 mL', 'Volume'))"
      const esm = `import { litres } from 'porewater'; import { parseQuantity } from 'porewater/text'; ${use}`
      const cjs = `const { litres } = require('porewater'); const { parseQuantity } = require('porewater/text'); ${use}`
      expect(node('--input-type=module', '-e', esm)).toMatchObject({ status: 0, stdout: '2 0.003\n' })
      expect(node('--input-type=commonjs', '-e', cjs)).toMatchObject({ status: 0, stdout: '2 0.003\n' })
      expect(node('--input-type=module', '-e', "import 'porewater/schema'").stderr).toMatch(/Cannot find package 'zod'/)
      // The command brings what it needs; only a product of two units asks mathjs.
      const bin = join('node_modules/porewater', commandFile())
      expect(node(bin, 'litres', '2')).toMatchObject({ status: 0, stdout: '{"result":2,"unit":"L"}\n', stderr: '' })
      const session = spawnSync('node', [bin], { cwd: lean, encoding: 'utf8', input: 'litres(2) * metres(3)\n' })
      expect(session).toMatchObject({ status: 1, stdout: expect.stringMatching(/needs mathjs; .*npm install mathjs/) })
      writeFileSync(join(lean, 'package.json'), '{ "type": "module" }')
      writeFileSync(
        join(lean, 'a.ts'),
        "import { litres, type Volume } from 'porewater'\nexport const v: Volume = litres(2)\n",
      )
      const options = ['--strict', '--noEmit', '--module', 'nodenext', '--target', 'es2022', '--lib', 'es2022']
      expect(node(join(root, 'node_modules/typescript/bin/tsc'), ...options, 'a.ts')).toMatchObject({
        status: 0,
        stdout: '',
      })
    } finally {
      rmSync(lean, { recursive: true, force: true })
    }
  }, 60_000)
  it('runs nothing when it is installed, and neither does what it may bring', () => {
    for (const script of ['preinstall', 'install', 'postinstall', 'prepare'])
      expect(packed().scripts, script).not.toHaveProperty(script)
    expect(packed().dependencies).toBeUndefined()
    expect(Object.keys(packed().optionalDependencies).sort()).toEqual([...OPTIONAL].sort())
    const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages
    const shipped = Object.entries<{ dev?: boolean; hasInstallScript?: boolean }>(lock).filter(([, { dev }]) => !dev)
    expect(shipped.length).toBeGreaterThan(OPTIONAL.length)
    expect(shipped.filter(([, { hasInstallScript }]) => hasInstallScript)).toEqual([])
  })
  it('holds what README and guides link to', () => {
    const inside = join(folder, 'node_modules/porewater')
    const guides = readdirSync(join(inside, 'docs/guides')).filter((name) => name.endsWith('.md'))
    expect(guides.length).toBeGreaterThan(15)
    const broken = ['README.md', ...guides.map((name) => `docs/guides/${name}`)].flatMap((page) =>
      [...readFileSync(join(inside, page), 'utf8').matchAll(/\]\(([^)#\s]+)[^)]*\)/g)]
        .map(([, to = '']) => to)
        .filter((to) => !/^https?:/.test(to) && !existsSync(join(inside, page, '..', to)))
        .map((to) => `${page}: ${to}`),
    )
    expect(broken).toEqual([])
  })
  it('has a second script with text and charts', () => {
    const source = readFileSync(join(folder, 'node_modules/porewater/dist/porewater-text-chart.iife.js'), 'utf8')
    const more = new Function(`${source}; return porewaterTextChart`)()
    expect(more.parseQuantity('150 mL', 'Volume')).toBe(0.15)
    expect(more.drawPanels).toBeTypeOf('function')
  })
  it('runs as one script in an engine without modules', () => {
    writeFileSync(
      join(folder, 'c.cjs'),
      `const source = require('node:fs').readFileSync('node_modules/porewater/dist/porewater.iife.js', 'utf8')
const porewater = new Function(source + '; return porewater')()
console.log(porewater.waterContentTopp1980(porewater.permittivity(20)).toFixed(4))`,
    )
    expect(run('node', 'c.cjs')).toBe('0.3454\n')
  })
  it('brings the command: JSON in, JSON out, exit codes, and lines of a session through a pipe', () => {
    expect(porewater(['--version'], '').stdout).toMatch(/^\d+\.\d+\.\d+\n$/)
    const shot = '{"substrateVolume":"11 L","rise":"3 points","drainFraction":"15 %"}'
    const done = porewater(['shotVolume'], shot)
    expect(done).toMatchObject({ status: 0, stderr: '' })
    expect(JSON.parse(done.stdout)).toEqual({ result: (0.03 * 11) / (1 - 0.15), unit: 'L' })
    const refused = porewater(['shotVolume'], shot.replace('11 L', '11 cm'))
    expect(refused).toMatchObject({ status: 1, stdout: '' })
    expect(JSON.parse(refused.stderr).error.code).toBe('bad-input')
    expect(porewater(['shotVolume'], 'not JSON')).toMatchObject({ status: 2, stdout: '' })
    // By npx, and a writer that takes longer than a second.
    const slow = spawnSync('sh', ['-c', "(sleep 2; echo '[2]') | npx --no-install porewater litres"], {
      cwd: folder,
      encoding: 'utf8',
    })
    expect(slow).toMatchObject({ status: 0, stderr: '', stdout: '{"result":2,"unit":"L"}\n' })
    expect(porewater([], 'const theta = waterContentTopp1980(20)\ntheta\n')).toMatchObject({
      status: 0,
      stdout: '0.3454 m³/m³\n0.3454 m³/m³\n',
    })
  }, 60_000)
  it.each([
    ['node16', 'node16'],
    ['nodenext', 'nodenext'],
    ['esnext', 'bundler'],
  ])(
    'compiles under module %s, resolution %s, strict, with its typings checked',
    (module, moduleResolution) => {
      writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
      const use = `import { litres, millilitres, add, inLitres, type Volume } from 'porewater'
import { waterContentTopp1980 } from 'porewater/dielectric'
import { permittivity, metres } from 'porewater/quantity'
import { catalogue } from 'porewater/catalogue'
const both: Volume = add(litres(1), millilitres(500))
// @ts-expect-error a length is not a volume
add(litres(1), metres(1))
console.log(inLitres(both), waterContentTopp1980(permittivity(20)), catalogue.length)
`
      writeFileSync(join(folder, 'd.ts'), use)
      writeFileSync(join(folder, 'e.cts'), use)
      writeFileSync(
        join(folder, 'tsconfig.json'),
        JSON.stringify({
          compilerOptions: {
            strict: true,
            skipLibCheck: false,
            noEmit: true,
            module,
            moduleResolution,
            target: 'es2022',
            lib: ['es2022', 'dom'],
            types: [],
            exactOptionalPropertyTypes: true,
          },
          files: ['d.ts', ...(moduleResolution === 'bundler' ? [] : ['e.cts'])],
        }),
      )
      run('node', join(root, 'node_modules/typescript/bin/tsc'), '-p', '.')
    },
    60_000,
  )
  it('is what publint and the types checker expect', () => {
    expect(run('node', join(root, 'node_modules/publint/src/cli.js'), 'node_modules/porewater', '--strict')).toMatch(
      /All good/,
    )
    const [tarball] = execFileSync('ls', [folder], { encoding: 'utf8' })
      .split('\n')
      .filter((name) => name.endsWith('.tgz'))
    // Ends with an error when an entry point has wrong typings; only resolvers older than Node 16 are left out.
    const table = run(
      'node',
      join(root, 'node_modules/@arethetypeswrong/cli/dist/index.js'),
      tarball as string,
      '--profile',
      'node16',
      '--no-color',
    )
    expect(table).toMatch(/"porewater\/catalogue"/)
    expect(table.replace(/\(ignored[^│\n]*/g, '')).not.toMatch(/💀|❌|🎭|👺|🤨|🐛|🥴|🃏|🚭|⚠/u)
  }, 120_000)
})
