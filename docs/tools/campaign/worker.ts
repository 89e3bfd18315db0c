import { type Callable, callables, oneTrial } from './trial.js'

/** Tells each call before it is made, so that the one that hangs is known. */
const [seed, first, only] = [Number(process.argv[2]), Number(process.argv[3]), process.argv[4]]
const used = new Map<Callable, { seconds: number; trial: number }>()
for (const callable of await callables(only)) used.set(callable, { seconds: 0, trial: first })
process.once('disconnect', () => process.exit())

for (;;) {
  // Whoever had the least time is next: one slow function must not eat the campaign.
  const [callable, spent] = [...used].reduce((a, b) => (b[1].seconds < a[1].seconds ? b : a))
  for (let call = 0; call < 50; call++) {
    const started = performance.now()
    await told({ name: callable.entry.name, trial: spent.trial })
    const find = oneTrial(callable, seed, spent.trial++)
    const seconds = (performance.now() - started) / 1000
    spent.seconds += seconds
    if (find !== undefined) await told({ find })
    if (seconds > 0.01) break
  }
}

function told(message: object): Promise<void> {
  return new Promise((resolve) => process.send?.(message, () => resolve()))
}
