import type { Suspicion } from '../cause/cause.js'
import type { TimingWatch } from '../watch/watch-timing.js'
import { evidence, suspicion } from './suspicion.js'

/** Orders and their answers that do not belong to the same times. */
export function suspectTiming({ moved }: TimingWatch): Suspicion[] {
  if (moved === null) return []
  const because = [evidence('time-between-series', moved.by, 's', { usual: 0, time: moved.time })]
  return [suspicion('clock-wrong', 'caution', 0.96, because, 'set-the-clock')]
}
