/** Steps between two looks at their pace, how many times more than are allowed it may ask for, and from which growth on it may yet do. */
const LOOK = 1000
const HOPELESS = 20
const GROWING = 1.2

/** When the pace is looked at next, with the time that was ahead at the last look and what had gone since the one before. */
interface Look {
  at: number
  ahead: number
  gone: number
}

export function firstLook(steps: number, duration: number): Look {
  return { at: steps + LOOK, ahead: duration, gone: 0 }
}

/** Whether steps that do not grow would not end: better another way, or a refusal, soon than after twenty seconds. */
export function isHopeless(look: Look, left: number, maxSteps: number): boolean {
  const gone = look.ahead - left
  const grows = gone >= GROWING * look.gone
  look.at += LOOK
  look.ahead = left
  look.gone = gone
  return !grows && left > HOPELESS * (maxSteps / LOOK) * gone
}
