import { type Callable, callables, oneTrial } from './trial.js'

/** Tells each call before it is made, so that the one that hangs is known. */
const [seed, first, only] = [Number(process.argv[2]), Number(process.argv[3]), process.argv[4]]
interface Turn {
  readonly callable: Callable
  readonly seconds: number
  readonly trial: number
}
/** In the order of the time that each had: one slow function must not eat the campaign. */
const turns: Turn[] = []
process.once('disconnect', () => process.exit())

for await (const callable of callables(only)) await take({ callable, seconds: 0, trial: first })
for (;;) await take(turns.shift()!)

async function take(turn: Turn): Promise<void> {
  const next = await taken(turn)
  turns.splice(placeOf(next.seconds), 0, next)
}

/** Fifty calls, or one that is slow. */
async function taken({ callable, seconds, trial }: Turn): Promise<Turn> {
  for (let call = 0; call < 50; call++) {
    const started = performance.now()
    await told({ name: callable.entry.name, trial })
    const find = oneTrial(callable, seed, trial++)
    const took = (performance.now() - started) / 1000
    seconds += took
    if (find !== undefined) await told({ find })
    if (took > 0.01) break
  }
  return { callable, seconds, trial }
}

/** Where a turn belongs that has had so much: behind all that had no more. */
function placeOf(seconds: number): number {
  let [low, high] = [0, turns.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (turns[middle]!.seconds <= seconds) low = middle + 1
    else high = middle
  }
  return low
}

function told(message: object): Promise<void> {
  return new Promise((resolve) => process.send?.(message, () => resolve()))
}
