import type { Called } from './called.js'

/** What a person typed, and what came of it. */
export interface Heard {
  readonly source: string
  readonly value?: unknown
  readonly called?: Called | undefined
  readonly error?: unknown
}

/** One step of the lesson. */
export interface Step {
  readonly task: string
  /** One line that does it. */
  readonly answer: string
  /** What it showed, once it is done. */
  readonly learnt: string
  readonly done: (heard: Heard) => boolean
  /** What to say to a try that is near but wrong. */
  readonly nearly?: (heard: Heard) => string | undefined
}

const gave = (name: string, value: number) => (heard: Heard) =>
  heard.called?.entry.name === name &&
  typeof heard.called.value === 'number' &&
  Math.abs(heard.called.value - value) <= 1e-6 * Math.abs(value)
const ratioTo = (name: string, value: number, heard: Heard) =>
  heard.called?.entry.name === name && typeof heard.called.value === 'number' ? heard.called.value / value : 1
const about = (ratio: number, wanted: number) => Math.abs(ratio / wanted - 1) < 1e-6
const typed = (command: string) => (heard: Heard) =>
  heard.error === undefined && heard.source.replace(/\s|"|'|`/g, '').startsWith(command)

const SHOT = (0.03 * 11) / 0.85
const TIME = (SHOT / 4) * 3600

/** The scenario is invented: eight pots of peat on a bench, each with a probe and two emitters. */
export const STEPS: readonly Step[] = [
  {
    task: 'A probe in the pot reads a permittivity of 20. Mineral soils follow the curve of Topp and others (1980). What water content is that?',
    answer: 'waterContentTopp1980(20)',
    learnt: 'A result comes with its unit: m³ of water in a m³ of medium. Kept in a name it is a plain number.',
    done: gave('waterContentTopp1980', 0.3454),
  },
  {
    task: 'Before a formula is believed, look at where it was measured: ask for help about it, and read "Valid for".',
    answer: 'help(waterContentTopp1980)',
    learnt: 'Mineral soils. But this pot holds peat, so another curve is needed.',
    done: typed('help(waterContentTopp1980'),
  },
  {
    task: 'Search for curves of peat by the word.',
    answer: "find('peat')",
    learnt: 'The names say who measured, and when; help(...) tells on what.',
    done: typed('find(peat'),
  },
  {
    task: 'Kellner and Lundin (2001) measured peat. What does the same reading of 20 mean with their curve?',
    answer: 'waterContentKellnerLundin2001(20)',
    learnt:
      'Seventeen points more from the same reading: the wrong curve costs a crop. The best curve is the one you fit to weighed samples of your own medium.',
    done: (heard) => heard.called?.entry.name === 'waterContentKellnerLundin2001' && heard.source.includes('20'),
  },
  {
    task: 'See the whole curve from a permittivity of 5 to one of 50.',
    answer: 'plot(waterContentKellnerLundin2001, 5, 50)',
    learnt: 'The line below the plot says in words what it shows. table(...) gives the numbers.',
    done: typed('plot(waterContentKellnerLundin2001,'),
  },
  {
    task: "Now a shot of water. The pot holds 11 litres of peat. See what a wrong unit does: type\n  shotVolume({ substrateVolume: '11 cm', rise: '3 points', drainFraction: '15 %' })",
    answer: "shotVolume({ substrateVolume: '11 cm', rise: '3 points', drainFraction: '15 %' })",
    learnt: 'A length is no volume, so nothing is computed; the refusal lists the units that are.',
    done: (heard) => /^substrateVolume \(Volume\): "11/.test(String((heard.error as Error | undefined)?.message)),
  },
  {
    task: 'Put the unit right and keep the result: const shot = shotVolume({ ... }) for 11 litres, a rise of 3 points, and 15 % that drains.',
    answer: "const shot = shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: '15 %' })",
    learnt: 'What should stay in the pot, divided by the share that does not drain: 0.33 L / 0.85.',
    done: (heard) => gave('shotVolume', SHOT)(heard) && /\bshot\s*=/.test(heard.source),
    nearly: (heard) => {
      if (gave('shotVolume', SHOT)(heard))
        return 'That is the shot. Keep it for the next steps: const shot = shotVolume({ ... })'
      const ratio = ratioTo('shotVolume', SHOT, heard)
      if (about(ratio, 1000))
        return "A thousand times too much. A plain number is taken in litres, so that 11000 is a tank: write '11000 mL', or 11."
      if (about(ratio, 3.785411784)) return 'Those are US gallons; the pot holds 11 litres.'
      return undefined
    },
  },
  {
    task: 'Read the same volume in millilitres, to check it with a jug.',
    answer: 'inMillilitres(shot)',
    learnt:
      'The name in...() reads a quantity in the unit you want. Collect one shot in a jug now and then: emitters clog.',
    done: gave('inMillilitres', SHOT * 1000),
  },
  {
    task: 'Two emitters of 2 litres an hour water each pot. How long must the valve be open for this shot?',
    answer: "runTime({ volume: shot, emitterFlow: '2 L/h', emitters: 2 })",
    learnt: 'About six minutes, plus the time in which the line fills: lineFill, if you have measured it.',
    done: gave('runTime', TIME),
    nearly: (heard) => {
      const ratio = ratioTo('runTime', TIME, heard)
      if (about(ratio, 2)) return 'Twice too long: two emitters share the shot.'
      if (about(ratio, 1000))
        return 'A thousand times too long: shot is in litres already; volume: shot, without a unit.'
      return undefined
    },
  },
  {
    task: 'The plant uses 1.5 litres a day. How many such shots is that, if 15 % of each drains?',
    answer: "shotsPerDay({ dailyUse: '1.5 L', shot, drainFraction: '15 %' })",
    learnt:
      'Five. Last, the limit of all this: a plan is advice. A valve needs a maximum run time, a daily maximum and a look at the drain that do not depend on it.',
    done: gave('shotsPerDay', 5),
  },
]
