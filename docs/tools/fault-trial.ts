/**
 * Puts faults of the house into a copy of the tree, and expects a test of its own to notice each: a clock and output in the core, a word
 * that nobody looks at, text where a number belongs, a function that no index lists. Without a fault the same tests pass.
 * `npm run faults:trial`, a step of the checks before a change lands.
 */
import { execFileSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { inTreeCopy } from './house/tree-copy.js'

const SHOT = 'src/irrigation/shot/shot-volume.ts'
const CORE = 'tests/house/pure-core.test.ts'
const EXPORTS = 'tests/house/exports.test.ts'
const JAVASCRIPT = 'tests/catalogue/javascript.test.ts'
/** Of these files, what the faults below have to do with. */
const PART = '--testNamePattern=the core|is public|shotVolume|planDay'

interface Fault {
  readonly what: string
  readonly path: string
  readonly from: string
  readonly to: string
  /** The file of tests in which one with that name must fail. */
  readonly file: string
  readonly noticedBy: RegExp
}

/** Faults of one group are put in together: each is looked for by a file of its own, and most of a run goes into reading the sources. */
const FAULTS: readonly (readonly Fault[])[] = [
  [
    {
      what: 'a clock and output in the core',
      path: SHOT,
      from: '  return (',
      to: '  console.log(Date.now())\n  return (',
      file: CORE,
      noticedBy: /^the core has no clock/,
    },
    {
      what: 'a word that nobody looks at',
      path: 'src/irrigation/plan/plan-trigger.ts',
      from: "  oneOf(trigger.by, ['level', 'light', 'clock'], 'trigger.by')\n",
      to: '',
      file: JAVASCRIPT,
      noticedBy: /planDay/,
    },
    {
      what: 'an exported function that no index lists',
      path: SHOT,
      from: '/**',
      to: 'export function unlisted(): number {\n  return 1\n}\n\n/**',
      file: EXPORTS,
      noticedBy: /is public and listed/,
    },
  ],
  [
    {
      what: 'text where a number belongs',
      path: SHOT,
      from: "numberIn(input.rise, WATER_CONTENT_CHANGE, 'rise')",
      to: 'input.rise',
      file: JAVASCRIPT,
      noticedBy: /shotVolume/,
    },
  ],
]

inTreeCopy(({ folder, inCopy, run, test }) => {
  // The tests of the house ask git which files there are.
  execFileSync('git', ['init', '--quiet'], { cwd: folder })
  run('docs/tools/catalogue.ts', '--if-missing')
  const usual = test(CORE, EXPORTS, JAVASCRIPT, PART)
  const broken = usual.filter(({ passed }) => !passed)
  if (usual.length < 6 || broken.length > 0)
    throw new Error(`without a fault ${broken.length} of ${usual.length} tests fail: ${broken[0]?.name}`)
  for (const group of FAULTS) {
    const sound = new Map(group.map(({ path }) => [path, readFileSync(inCopy(path), 'utf8')]))
    for (const { what, path, from, to } of group) {
      const code = readFileSync(inCopy(path), 'utf8')
      if (!code.includes(from)) throw new Error(`${path} no longer has the place for ${what}`)
      writeFileSync(inCopy(path), code.replace(from, to))
    }
    const failed = test(...group.map(({ file }) => file), PART).filter(({ passed }) => !passed)
    for (const [path, code] of sound) writeFileSync(inCopy(path), code)
    for (const { what, noticedBy } of group) {
      const by = failed.filter(({ name }) => noticedBy.test(name))
      if (by.length === 0) throw new Error(`no test noticed ${what}`)
      console.log(`${what}: ${by.map(({ name }) => name).join('; ')}`)
    }
  }
})
