import { createContext } from 'node:vm'
import { beforeEach, describe, expect, it } from 'vitest'
import { STEPS } from '../../src/repl/lesson-steps.js'
import { Session } from '../../src/repl/session.js'

let session = new Session()
let context = createContext({})
const say = (line: string) => session.enter(line, context).shown
const goTo = (step: number) => {
  say('lesson()')
  for (const { answer } of STEPS.slice(0, step - 1)) say(answer)
  expect(session.lesson.step).toBe(step - 1)
}

beforeEach(() => {
  session = new Session()
  context = createContext({ ...session.names })
})

describe('the lesson', () => {
  it('runs to its end with the answers it proposes', () => {
    expect(say('lesson()')).toMatch(/Step 1 of 10/)
    STEPS.forEach(({ answer }, i) => {
      const said = say(answer)
      expect(said, answer).toMatch(/\nRight\. /)
      expect(said).toMatch(i + 1 < STEPS.length ? `Step ${i + 2} of ${STEPS.length}` : /That is the lesson/)
    })
    expect(session.lesson.step).toBe(-1)
  })
  it('takes the same answer in other units and as plain numbers', () => {
    goTo(7)
    expect(
      say("const shot = shotVolume({ substrateVolume: '11000 mL', rise: 0.03, drainFraction: fraction(0.15) })"),
    ).toMatch(/Right/)
  })
  it('does not go on for a wrong answer, and lets other things be tried', () => {
    goTo(1)
    // -0.053 + 0.876 - 0.495 + 0.1161, by the published polynomial.
    expect(say('waterContentTopp1980(30)')).toBe('0.4441 m³/m³')
    expect(say('2 + 2')).toBe('4')
    expect(session.lesson.step).toBe(0)
  })
  it.each([
    [
      "const shot = shotVolume({ substrateVolume: '11 cm', rise: '3 points', drainFraction: '15 %' })",
      /substrateVolume must be a Volume/,
    ],
    [
      "const shot = shotVolume({ substrateVolume: 11000, rise: '3 points', drainFraction: '15 %' })",
      /A thousand times too much/,
    ],
    ["const shot = shotVolume({ substrateVolume: '11 gal', rise: '3 points', drainFraction: '15 %' })", /US gallons/],
    ["const shot = shotVolume({ substrateVolume: '11 L', rise: 3, drainFraction: '15 %' })", /'3 points' or 0\.03/],
    ["const shot = shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: 15 })", /'15 %' or 0\.15/],
    ["shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: '15 %' })", /Keep it/],
  ])('helps: %s', (line, help) => {
    goTo(7)
    const said = say(line)
    expect(said).toMatch(/Not yet\. /)
    expect(said).toMatch(help)
    expect(session.lesson.step).toBe(6)
  })
  it('helps with the run time, too', () => {
    goTo(9)
    expect(say("runTime({ volume: shot, emitterFlow: '2 L/h', emitters: 1 })")).toMatch(/two emitters share/)
    expect(say("runTime({ volume: shot, emitterFlow: '2 L', emitters: 2 })")).toMatch(/emitterFlow must be a Flow/)
  })
  it('gives hints, skips, stops, and begins again', () => {
    expect(say("lesson('hint')")).toMatch(/^Refused: lesson: has not begun/)
    say('lesson()')
    expect(say("lesson('hint')")).toMatch(/waterContentTopp1980\(20\)/)
    expect(say("lesson('skip')")).toMatch(/Step 2 of/)
    expect(say("lesson('stop')")).toMatch(/ends here/)
    expect(say('help(waterContentTopp1980)')).not.toMatch(/Right/)
    expect(say('lesson()')).toMatch(/Step 1 of/)
    expect(say("lesson('jump')")).toMatch(/^Refused: /)
  })
})
