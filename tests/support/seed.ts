import fc from 'fast-check'

/**
 * Property tests draw the same cases in every run, so that a failure is one of the change and not of the day. `POREWATER_SEED=7`
 * draws others; look for new counterexamples that way, and keep each as a case of its own.
 */
fc.configureGlobal({ seed: Number(process.env.POREWATER_SEED ?? 20260519) })
