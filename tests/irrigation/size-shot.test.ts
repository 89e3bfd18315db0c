import fc from 'fast-check'
import {
  cubicMetresPerHour,
  explainIrrigationFinding,
  fraction,
  litres,
  litresPerHour,
  minutes,
  percent,
  runTime,
  type ShotFinding,
  type SizeShotInput,
  seconds,
  shotVolume,
  sizeShot,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const usual: SizeShotInput = {
  substrateVolume: litres(11.25),
  rise: waterContentChange(0.03),
  drainFraction: percent(15),
  emitterFlow: litresPerHour(2.1),
  emitters: 3,
  lineFill: seconds(12),
}

const inputs = fc
  .record({
    substrateVolume: fc.double({ min: 0.2, max: 100, noNaN: true }).map(litres),
    rise: fc.double({ min: 0, max: 0.5, noNaN: true }).map((x) => waterContentChange(x < 1e-12 ? 0 : x)),
    drain: fc.double({ min: 0, max: 0.9, noNaN: true }),
    emitterFlow: fc.double({ min: 0.5, max: 8, noNaN: true }).map(litresPerHour),
    emitters: fc.integer({ min: 1, max: 20 }),
    lineFill: fc.double({ min: 0, max: 120, noNaN: true }).map(seconds),
    minRunTime: fc.double({ min: 0, max: 300, noNaN: true }).map(seconds),
    maxRunTime: fc.double({ min: 300, max: 3600, noNaN: true }).map(seconds),
  })
  .map(({ drain, ...rest }) => ({ ...rest, drainFraction: fraction(drain) }) as SizeShotInput)

describe('sizing a shot in one call', () => {
  it('agrees with its parts where no limit decides', () => {
    const shot = sizeShot(usual)
    expect(shot.volume).toBeCloseTo(shotVolume(usual), 12)
    expect(shot.runTime).toBeCloseTo(runTime({ ...usual, volume: shot.volume }), 9)
    expect(shot).toMatchObject({ boundBy: undefined, findings: [] })
    expect(shot.expectedDrain).toBeCloseTo(0.15 * shot.volume, 12)
  })
  it('applies what is kept and what drains, within the limits of the valve', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const shot = sizeShot(input)
        expect(Math.abs(shot.retained + shot.expectedDrain - shot.volume)).toBeLessThanOrEqual(
          1e-12 * (1 + shot.volume),
        )
        expect(shot.retained).toBeLessThanOrEqual(input.rise * input.substrateVolume * (1 + 1e-12))
        expect(shot.expectedDrain).toBeGreaterThanOrEqual(0)
        expect(shot.perEmitter * input.emitters).toBeCloseTo(shot.volume, 9)
        if (shot.volume === 0 && shot.boundBy === undefined) expect(shot.runTime).toBe(0)
        else {
          expect(shot.runTime).toBeLessThanOrEqual(input.maxRunTime as number)
          expect(shot.runTime).toBeGreaterThanOrEqual(input.minRunTime as number)
        }
        const spoken = shot.findings.map(({ code }) => code)
        if (shot.boundBy !== undefined) expect(spoken).toContain(shot.boundBy)
        for (const { value } of shot.findings) expect(value).toBeGreaterThan(0)
      }),
    )
  })
  it('never gives less water when more drain is wanted', () => {
    fc.assert(
      fc.property(inputs, fc.double({ min: 0, max: 0.9, noNaN: true }), (input, other) => {
        const more = sizeShot({ ...input, drainFraction: fraction(Math.max(other, input.drainFraction)) })
        expect(more.volume).toBeGreaterThanOrEqual(sizeShot(input).volume * (1 - 1e-12))
      }),
    )
  })
  it('says which limit of the valve decides, and what comes of it', () => {
    const long = sizeShot({ ...usual, minRunTime: minutes(5) })
    expect(long).toMatchObject({ boundBy: 'min-run-time', runTime: 300, findings: [{ code: 'min-run-time' }] })
    expect(long.volume).toBeCloseTo((288 / 3600) * 6.3, 12)
    expect(long.retained).toBeCloseTo(0.3375, 12)
    const short = sizeShot({ ...usual, maxRunTime: minutes(3) })
    expect(short).toMatchObject({ boundBy: 'max-run-time', runTime: 180, findings: [{ code: 'max-run-time' }] })
    expect(short.expectedDrain / short.volume).toBeCloseTo(0.15, 12)
  })
  it('warns of a pump that is too small and of a line that takes long to fill', () => {
    const shot = sizeShot({ ...usual, lineFill: seconds(40), emittersOnValve: 1500, pumpFlow: cubicMetresPerHour(2) })
    expect(shot.findings).toMatchObject([
      { code: 'line-fill', level: 'note', value: expect.closeTo(40 - (40 + (0.3375 / 0.85 / 6.3) * 3600) / 10, 9) },
      { code: 'pump-flow', level: 'danger', value: expect.closeTo(1150, 9), unit: 'L/h' },
    ])
    expect(sizeShot({ ...usual, emittersOnValve: 900, pumpFlow: cubicMetresPerHour(2) }).findings).toEqual([])
  })
  it('puts each warning into words with its number and what to do', () => {
    const said = (more: Partial<SizeShotInput>) =>
      sizeShot({ ...usual, ...more }).findings.map(explainIrrigationFinding)
    expect(said({ maxRunTime: minutes(3) })).toMatchObject([
      {
        code: 'max-run-time',
        level: 'caution',
        message: expect.stringMatching(/closes 58.9 s before .*: give more shots/),
      },
    ])
    expect(said({ minRunTime: minutes(5) })).toMatchObject([
      { code: 'min-run-time', message: expect.stringMatching(/open 61.1 s longer .*: the surplus drains/) },
    ])
    expect(said({ lineFill: seconds(40), emittersOnValve: 1500, pumpFlow: cubicMetresPerHour(2) })).toMatchObject([
      {
        code: 'line-fill',
        message: expect.stringMatching(/13.3 s more than a tenth/),
        source: 'common practice, no source',
      },
      {
        code: 'pump-flow',
        level: 'danger',
        message: expect.stringMatching(/take 1150 L\/h more than the pump gives: .*split the valve/),
      },
    ])
  })
  it('has no words for a code that is not its own', () => {
    const other = { code: 'hail', level: 'note', value: 1, unit: 's' } as unknown as ShotFinding
    expectInputError(() => explainIrrigationFinding(other), 'finding')
  })
  it('does not open the valve for no rise', () => {
    expect(sizeShot({ ...usual, rise: waterContentChange(0), minRunTime: minutes(1) })).toMatchObject({
      volume: 0,
      runTime: 0,
      boundBy: undefined,
      findings: [],
    })
  })
  it('takes a valve that knows only one run time', () => {
    const shot = sizeShot({ ...usual, minRunTime: minutes(4), maxRunTime: minutes(4) })
    expect(shot.runTime).toBe(240)
  })
  it('has an end, or is refused: flows, volumes and counts at the ends of what numbers can be', () => {
    const ends = [5e-324, 1e-320, 1e-300, 1e-150, 1e150, 1e300, 1.7e308]
    const full = { ...usual, minRunTime: seconds(60), maxRunTime: minutes(20), emittersOnValve: 600 }
    for (const key of Object.keys(full))
      for (const end of ends)
        for (const more of [{}, { emitters: 1e-10 }, { emitters: 1e10 }, { pumpFlow: litresPerHour(2000) }]) {
          const input = { ...full, ...more, [key]: end } as SizeShotInput
          let shot: ReturnType<typeof sizeShot>
          try {
            shot = sizeShot(input)
          } catch (error) {
            expect(['outside-domain', 'bad-input']).toContain((error as { code: string }).code)
            continue
          }
          const numbers = [shot.volume, shot.perEmitter, shot.retained, shot.expectedDrain, shot.runTime]
          for (const value of [...numbers, ...shot.findings.map((finding) => finding.value)])
            expect([key, end, Number.isFinite(value)]).toEqual([key, end, true])
        }
    expectDomainError(() => sizeShot({ ...usual, emitterFlow: litresPerHour(1e-320) }), { argument: 'emitterFlow' })
  })
  it('refuses a least run time above the most', () => {
    expectInputError(() => sizeShot({ ...usual, minRunTime: minutes(5), maxRunTime: minutes(2) }), 'minRunTime')
    expectDomainError(() => sizeShot({ ...usual, rise: waterContentChange(-0.1) }), {
      argument: 'rise',
    })
  })
})
