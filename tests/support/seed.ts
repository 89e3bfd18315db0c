import fc from 'fast-check'

/**
 * Property tests draw the same cases in every run, so that a failure is one of the change and not of the day. `POREWATER_SEED=7`
 * draws others; look for new counterexamples that way, and keep each as a case of its own. `POREWATER_PROPERTY_MS` ends each
 * property after so many milliseconds: mutation testing runs them by the thousand. Lists become as long as a test allows; by
 * default they would stop at ten.
 */
const { POREWATER_SEED, POREWATER_PROPERTY_MS } = process.env
fc.configureGlobal({
  seed: Number(POREWATER_SEED ?? 20260519),
  defaultSizeToMaxWhenMaxSpecified: true,
  ...(POREWATER_PROPERTY_MS && { interruptAfterTimeLimit: Number(POREWATER_PROPERTY_MS) }),
})
