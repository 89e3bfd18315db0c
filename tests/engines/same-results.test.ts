import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import vm from 'node:vm'
import * as porewater from 'porewater'
import { catalogue } from 'porewater/catalogue'
import { getQuickJS } from 'quickjs-emscripten'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Equation } from '../../docs/explorer/equation.js'
import { equationOf } from '../../docs/tools/explorer.js'
import { argumentsOf } from '../support/arguments-of.js'
import { CHROMIUM, inChromium } from '../support/chromium.js'
import { ulpsBetween } from '../support/ulps.js'

/**
 * Only + − × ÷ √ and comparisons: the standard of the language (ECMA-262, Number and Math.sqrt, after IEEE 754) leaves no freedom, so
 * every engine gives the same bits. Powers, exponentials, logarithms and angles may differ in the last digits.
 */
const EXACT = [
  'airFilledPorosity',
  'appliedForLeaching',
  'bulkConductivityHilhorst2000',
  'cellConstant',
  'cropET',
  'dailyLightIntegral',
  'degreeOfSaturation',
  'drainFraction',
  'fahrenheit',
  'flushVolume',
  'gravimetricFromWaterContent',
  'fieldLeachingRequirement',
  'litres',
  'millilitres',
  'permittivityLedieu1986',
  'poreWaterConductivityHilhorst2000',
  'readilyAvailableWater',
  'refillPointByDepletion',
  'runTime',
  'shotVolume',
  'steadyDrainEC',
  'travelTimeFromPermittivity',
  'usGallons',
  'waterContentHerkelrath1991',
  'waterContentLedieu1986',
  'waterContentRoth1990',
  'waterContentTopp1980',
  'zoneFlow',
]
/** Units in the last place; what a chain of a few elementary functions, each good to one or two, may differ by. */
const FEW = 16

let equations: Equation[] = []
let program = ''
let here: number[] = []
const build = readFileSync(fileURLToPath(new URL('../../dist/porewater.iife.js', import.meta.url)), 'utf8')

beforeAll(async () => {
  equations = (await Promise.all(catalogue.map(equationOf))).filter((one) => one !== undefined)
  const calls = equations.map((equation) => [equation.name, argumentsOf(equation)])
  // JSON keeps the digits of every double and turns an argument that is left out into null, which is put back.
  program = `JSON.stringify(${JSON.stringify(calls)}.map(function (call) {
    return String(porewater[call[0]].apply(null, call[1].map(function (one) { return one === null ? undefined : one })))
  }))`
  here = equations.map((equation) => {
    const run = (porewater as unknown as Record<string, (...args: unknown[]) => number>)[equation.name]
    return (run as (...args: unknown[]) => number)(...argumentsOf(equation))
  })
}, 120_000)

function compare(text: string): void {
  const there = (JSON.parse(text) as string[]).map(Number)
  const apart = equations.map(({ name }, i) => ({ name, ulps: ulpsBetween(here[i] as number, there[i] as number) }))
  expect(here.length).toBeGreaterThan(400)
  expect(apart.filter(({ ulps }) => !(ulps <= FEW))).toEqual([])
  const exact = apart.filter(({ name }) => EXACT.includes(name))
  expect(exact.map(({ name }) => name).sort()).toEqual([...EXACT].sort())
  expect(exact.filter(({ ulps }) => ulps !== 0)).toEqual([])
  // Most of the rest agrees to the last bit as well.
  expect(apart.filter(({ ulps }) => ulps === 0).length / apart.length).toBeGreaterThan(0.9)
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
})
