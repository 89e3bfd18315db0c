import { randomNumbers } from '../../numerics/random.js'
import type { ReceivedReading } from '../controllers/rehearsed-controller.js'
import type { Effects } from '../faults/effects.js'

/** The way from the probes to the controller. */
export interface Messages {
  readonly send: (reading: ReceivedReading, effects: Effects, time: number) => void
  /** What has arrived since it was asked last, in the order of arrival. */
  readonly arrived: (time: number) => readonly ReceivedReading[]
}

interface Underway {
  readonly at: number
  readonly reading: ReceivedReading
}

export function messagesOf(seed: number): Messages {
  const random = randomNumbers(seed)
  let inbox: ReceivedReading[] = []
  let underway: Underway[] = []
  const buffer: ReceivedReading[] = []
  const post = (reading: ReceivedReading, effects: Effects, time: number) => {
    if (effects.delay > 0) underway.push({ at: time + effects.delay * random.uniform(), reading })
    else inbox.push(reading)
  }
  return {
    send: (reading, effects, time) => {
      if (effects.lost > 0 && random.uniform() < effects.lost) return
      if (effects.lostEvery > 0 && time % effects.lostEvery < 60) return
      post(reading, effects, time)
      if (effects.twice > 0 && random.uniform() < effects.twice) post(reading, effects, time)
      if (!effects.replayed) return
      buffer.push(reading)
      if (buffer.length > 120) post(buffer.shift()!, effects, time)
    },
    arrived: (time) => {
      if (underway.length > 0) {
        const here = underway.filter(({ at }) => at <= time).sort((a, b) => a.at - b.at)
        underway = underway.filter(({ at }) => at > time)
        for (const { reading } of here) inbox.push(reading)
      }
      const readings = inbox
      inbox = []
      return readings
    },
  }
}
