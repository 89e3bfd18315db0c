import type { Observation, RehearsalTruth, RehearsedController } from 'porewater'

/** Opens for some seconds at fixed hours of its own clock, whatever the readings say. */
export function byTheClock(hours: readonly number[], seconds: number): RehearsedController<number, number, boolean> {
  return {
    reducer: {
      start: 0,
      step: (count, now) => [
        count + 1,
        hours.some((hour) => (now % 86400) - hour * 3600 >= 0 && (now % 86400) - hour * 3600 < seconds),
      ],
    },
    input: ({ now }) => now,
    order: (open) => ({ open, closeAfter: seconds }),
  }
}

/** Opens for a minute whenever the newest reading of the first probe is below a level. Believes everything. */
export function credulous(level: number): RehearsedController<{ last: number }, unknown, boolean> {
  return {
    reducer: {
      start: { last: 1 },
      step: (state, value) => {
        const last = value === undefined ? state.last : (value as number)
        return [{ last }, last < level]
      },
    },
    input: ({ readings }: Observation) => readings.filter(({ probe }) => probe === 0).at(-1)?.value,
    order: (open) => ({ open, closeAfter: 60 }),
  }
}

/** Never opens. */
export const idle: RehearsedController<null, null, null> = {
  reducer: { start: null, step: () => [null, null] },
  input: () => null,
  order: () => ({ open: false }),
}

/** Keeps everything that it is shown. */
export function witness(
  seen: Observation[],
  order: (truth: RehearsalTruth, calls: number) => { open: boolean; closeAfter?: number } = () => ({ open: false }),
): RehearsedController<number, RehearsalTruth, { open: boolean; closeAfter?: number }> {
  return {
    reducer: { start: 0, step: (calls, truth) => [calls + 1, order(truth, calls)] },
    input: (observed, truth) => {
      seen.push(observed)
      return truth
    },
    order: (wanted) => wanted,
  }
}
