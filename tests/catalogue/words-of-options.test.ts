import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { catalogue } from 'porewater/catalogue'
import { beforeAll, describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { root } from '../../docs/tools/house/source-files.js'
import { type WordPlace, wordPlaces } from '../../docs/tools/house/word-places.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { partAt, withPart } from '../../docs/tools/replaced-part.js'

/** Places whose word nobody writes down, or that decides nothing, by the reason; matched with the function and the way to the place. */
const NOT_FED: Readonly<Record<string, RegExp>> = {
  'a day, a proposal or a diagnosis is given back as the review made it; its words are read by people only':
    /^(chartReview chart\.day|chartSeason chart\.days|diagnoseDay input\.day|proposeDay input\.day|reportZone input\.(day|proposal|diagnosis)|alarmConditions input\.diagnosis)\./,
  'a calibration is given back as the fit made it and works by its coefficients; a stored one comes through `restoreCalibration`, which refuses its words':
    /^(applyCalibration|applyCalibrationToSeries|applyNoUseCorrection|calibratedUncertainty|chartCalibration|correctDrift|probeDrift|diagnoseDay|followZone|proposeDay|reportZone|reviewDay|reviewZone|trustedReadings) .*\b(calibration|correction|drift)\./,
  'a plan is given back as `planDay` made it; the reasons of its shots and its findings are read by people only':
    /^(chartPlan chart|replanDay) ?\.?plan\.(shots|findings)\./,
  'a rehearsal is given back as `rehearse` made it': /^chartRehearsal chart\.outcome\./,
  'why something is not known is passed on as it was given': /\.(reason)$/,
  'a form that cannot be fitted is told among the refused ones, with the word': /^chooseRetentionModel /,
  'a dry-down is given back as `findDryDowns` made it': /^findClimbs input\.dryDowns\./,
  'entries and works of the catalogue are given back as they stand in it': /^(bibliography|bibtex|cslJson) /,
  'the code of a finding chooses the sentence, and is fed; what stands beside it is only repeated or not read':
    /^explain\w+ .*\.(level|unit|about|check|because|exposure|extreme|first|second|series|band|like|table|why|evidence\.0\.code)$|^explainZoneFinding finding\.weather\./,
}

/** What a call needs where the example leaves out the object around a word. */
const AROUND: Readonly<Record<string, unknown>> = {
  'checkReadings input.spike': { suspect: 0.02, fail: 0.05 },
  'checkReadings input.rateOfChange': { max: 0.001 },
  'watchReadings limits.rateOfChange': { max: 0.001 },
  'fitMediumToRecord record.probe': { height: 7, sensedHeight: 5, waterContents: Array(6).fill(0.5) },
  'rehearse rehearsal.faults': [{ fault: 'probes-silent', from: 36000 }],
  'rehearseMany many.faults': [['probes-silent']],
  'rehearsedWatering change': {},
  'containerFromDocument document': { version: 1, parts: [{ shape: 'box', length: 10, width: 10, height: 10 }] },
  'documentJsonSchema options': {},
  'documentSchema options': {},
  'readDocument options': {},
  'writeDocument options': {},
}

const callOf = rememberedCalls()
const CODES = ['outside-domain', 'bad-input', 'no-convergence', 'bad-document']

function thrownBy(
  { name }: WordPlace,
  args: unknown,
): { readonly code?: string; readonly argument?: string } | undefined {
  try {
    ;(publicNames[name] as (...args: unknown[]) => unknown)(...(args as unknown[]))
    return undefined
  } catch (error) {
    return error as { code?: string; argument?: string }
  }
}

/** The arguments of the example, with the objects around a place that it leaves out. */
async function callAround(place: WordPlace): Promise<unknown[] | undefined> {
  const entry = catalogue.find(({ name }) => name === place.name)
  const args = entry && (await callOf(entry))
  if (args === undefined) return undefined
  const around = Object.keys(AROUND).find((shown) => place.shown.startsWith(`${shown}.`))
  if (around === undefined) return args
  const path = place.path.slice(0, around.split(' ')[1]!.split('.').length)
  // An argument that the example leaves out stands after the others.
  const whole = [...args, ...Array<undefined>(Math.max(0, Number(path[0]) + 1 - args.length))]
  return withPart(whole, path, AROUND[around]) as unknown[]
}

/** What is wrong with the answer to a word that no option has. */
async function faultOf(place: WordPlace): Promise<string | undefined> {
  const args = await callAround(place)
  const around = args && partAt(args, place.path.slice(0, -1))
  if (typeof around !== 'object' || around === null || (Array.isArray(around) && around.length === 0))
    return `${place.shown}: the example does not reach it`
  const error = thrownBy(place, withPart(args, place.path, 'lihgt'))
  if (error === undefined) return `${place.shown}: answers`
  const said = `${place.shown}: ${String(error).slice(0, 120)}`
  if (!CODES.includes(error.code ?? '')) return said
  const key = place.path.filter((part) => part !== '0').at(-1)!
  return new RegExp(`lihgt|\\b${key}\\b`).test(`${String(error)} ${error.argument}`) ? undefined : said
}

describe('a word that no option has', () => {
  let places: readonly WordPlace[] = []
  beforeAll(() => {
    places = wordPlaces()
  }, 180_000)

  it('is refused, by name, wherever a public function takes a word: at any depth, in lists, behind aliases', async () => {
    const fed = places.filter(({ shown }) => !Object.values(NOT_FED).some((reason) => reason.test(shown)))
    expect(fed.length).toBeGreaterThan(95)
    const faults = []
    for (const place of fed) faults.push(await faultOf(place))
    expect(faults.filter((fault) => fault !== undefined)).toEqual([])
  }, 180_000)
  it.each(Object.entries(NOT_FED))('is not fed where %s', (_, reason) => {
    expect(places.some(({ shown }) => reason.test(shown))).toBe(true)
  })
  it.each(Object.keys(AROUND))('needs a call of its own for %s', (around) => {
    expect(places.some(({ shown }) => shown.startsWith(`${around}.`))).toBe(true)
  })
  it('is found in an alias, beside a number, in a list, in a tuple, and in a part of one of several objects', () => {
    const folder = mkdtempSync(join(root, 'tests/catalogue/words-'))
    const code = `
      export type Way = 'up' | 'down'
      export interface Input { readonly way?: Way; readonly every: number | 'never'; readonly many: readonly Way[] }
      type Trigger = { readonly by: 'light'; readonly sum: number } | { readonly by: 'level'; readonly turns: readonly [Way, number] }
      export function turn(input: Input, trigger?: Trigger): void {}`
    writeFileSync(join(folder, 'index.ts'), code)
    const found = wordPlaces([join(folder, 'index.ts')]).map(({ shown, words }) => `${shown} ${words.join('|')}`)
    rmSync(folder, { recursive: true })
    expect(found.sort()).toEqual([
      'turn input.every never',
      'turn input.many.0 down|up',
      'turn input.way down|up',
      'turn trigger.by level|light',
      'turn trigger.turns.0 down|up',
    ])
  }, 180_000)
})
