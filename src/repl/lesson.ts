import { InputError } from '../quantity/errors.js'
import { type Heard, STEPS } from './lesson-steps.js'

const BEGIN = [
  'A lesson of about ten minutes, from a probe reading to a sized shot. The scenario is invented: pots of peat on a bench.',
  "Type what each step asks for. lesson('hint') shows a line that does it, lesson('skip') goes on, lesson('stop') ends it.",
].join('\n')
const END = "That is the lesson. Go on with find('container'), help(planDay) or sources(shotVolume)."

/** The guided lesson: which step it is at, and what it says to each line. */
export class Lesson {
  private at = -1
  /** A command about the lesson is not an answer to it. */
  private asked = false

  get step(): number {
    return this.at
  }

  command(what?: unknown): string {
    this.asked = true
    if (what === undefined) {
      const resumed = this.at >= 0
      this.at = Math.max(this.at, 0)
      return resumed ? this.task() : `${BEGIN}\n\n${this.task()}`
    }
    if (this.at < 0 && what !== 'stop') throw new InputError('lesson', 'has not begun', 'begin with lesson()')
    if (what === 'hint') return `One line that does it:\n  ${STEPS[this.at]?.answer}`
    if (what === 'skip') return this.next()
    if (what !== 'stop')
      throw new InputError('lesson', `does not know ${String(what)}`, "use lesson(), 'hint', 'skip' or 'stop'")
    this.at = -1
    return 'The lesson ends here; lesson() begins it again.'
  }

  /** What the lesson says to a line; nothing when none is under way or the line has nothing to do with it. */
  heard(heard: Heard): string {
    if (this.asked) {
      this.asked = false
      return ''
    }
    const step = STEPS[this.at]
    if (step === undefined) return ''
    if (step.done(heard)) return `\nRight. ${step.learnt}\n\n${this.next()}`
    const help = step.nearly?.(heard) ?? unitHelp(heard.error)
    return help === undefined ? '' : `\nNot yet. ${help} (lesson('hint') shows a line that does it.)`
  }

  private next(): string {
    this.at++
    if (this.at < STEPS.length) return this.task()
    this.at = -1
    return END
  }

  private task(): string {
    return `Step ${this.at + 1} of ${STEPS.length}. ${STEPS[this.at]?.task}`
  }
}

/** What a refusal means, in the words of a beginner's mistake. */
function unitHelp(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null) return undefined
  const { code, argument, quantity, unit } = error as Record<string, unknown>
  const [, name, kind] = /^(\w+) \((\w+)\)$/.exec(String(argument)) ?? []
  if (code === 'bad-input' && kind !== undefined)
    return `The unit does not fit: ${name} must be a ${kind}. Use one of the units that the refusal lists.`
  if (code === 'outside-domain' && (unit === '1' || unit === 'm³/m³'))
    return `A plain number for ${String(quantity)} is a share of 1: write 3 points as '3 points' or 0.03, and 15 per cent as '15 %' or 0.15.`
  if (code === 'outside-domain')
    return `The number does not fit: ${String(quantity)} is taken in ${String(unit)} when it has no unit.`
  return undefined
}
