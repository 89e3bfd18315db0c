import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import vm from 'node:vm'
import * as porewater from 'porewater'
import { catalogue } from 'porewater/catalogue'
import { getQuickJS } from 'quickjs-emscripten'
import { beforeAll, describe, expect, it } from 'vitest'
import { argumentsOf } from '../../docs/explorer/arguments-of.js'
import type { Equation } from '../../docs/explorer/equation.js'
import { equationOf } from '../../docs/tools/explorer.js'
import { apart, EXACT, programOf } from '../../docs/tools/same-numbers.js'
import { CHROMIUM, inChromium } from '../support/chromium.js'
import { FIREFOX, inFirefox } from '../support/firefox.js'

let equations: Equation[] = []
let program = ''
let here: number[] = []
const build = readFileSync(fileURLToPath(new URL('../../dist/porewater.iife.js', import.meta.url)), 'utf8')

beforeAll(async () => {
  equations = (await Promise.all(catalogue.map(equationOf))).filter((one) => one !== undefined)
  program = programOf(equations)
  here = equations.map((equation) => {
    const run = (porewater as unknown as Record<string, (...args: unknown[]) => number>)[equation.name]
    return (run as (...args: unknown[]) => number)(...argumentsOf(equation))
  })
}, 120_000)

function compare(text: string): void {
  expect(here.length).toBeGreaterThan(400)
  const names = equations.map(({ name }) => name)
  expect(EXACT.filter((name) => !names.includes(name))).toEqual([])
  const { notExact, far, same } = apart(equations, here, (JSON.parse(text) as string[]).map(Number))
  expect(far).toEqual([])
  expect(notExact).toEqual([])
  // Most of the rest agrees to the last bit as well.
  expect(same).toBeGreaterThan(0.9)
}

describe('every function of numbers gives the same number', () => {
  it('in Node, from the one-file build', () => {
    compare(vm.runInNewContext(`${build};${program}`))
  })
  it('in QuickJS, which runs the one-file build unchanged', async () => {
    const quickjs = await getQuickJS()
    const context = quickjs.newContext()
    try {
      context.unwrapResult(context.evalCode(build)).dispose()
      const result = context.unwrapResult(context.evalCode(program))
      const text = context.getString(result)
      result.dispose()
      compare(text)
    } finally {
      context.dispose()
    }
  }, 60_000)
  it.skipIf(CHROMIUM === undefined)(
    'in Chromium (skipped where no Chromium is installed)',
    async () => {
      await inChromium(async (browser) => {
        const page = await browser.newPage()
        await page.addScriptTag({ content: build })
        compare(await page.evaluate<string>(program))
      })
    },
    60_000,
  )
  it.skipIf(FIREFOX === undefined)(
    'in Firefox (skipped where no Firefox is installed)',
    async () => {
      await inFirefox('about:blank', 1280, async (page) => {
        await page.addScriptTag({ content: build })
        compare((await page.evaluate(program)) as string)
      })
    },
    90_000,
  )
})
