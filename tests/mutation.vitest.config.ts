import { defineConfig } from 'vitest/config'
import base from './vitest.config'

/** Folders whose tests need neither git nor a build; mutation testing runs in a copy that has neither. */
const BEHAVIOUR =
  'quantity,numerics,water,air,dielectric,medium,flow,probe,demand,irrigation,record,control,uncertainty,scenarios'

/** What mutation testing runs: tests of behaviour, in one module graph, so that the package is loaded once and not once a file. */
export default defineConfig({
  ...base,
  test: {
    ...base.test,
    include: [`tests/{${process.env.POREWATER_TESTS ?? BEHAVIOUR},}/*.test.ts`],
    isolate: false,
    env: { POREWATER_PROPERTY_MS: process.env.POREWATER_PROPERTY_MS ?? '300' },
  },
})
