import { defineConfig } from 'vitest/config'
import base from './vitest.config.js'

/** Rooms whose own tests reach nearly every line of them within seconds; others by name in POREWATER_ROOMS. */
const ROOMS = process.env.POREWATER_ROOMS?.split(',') ?? [
  'quantity',
  'water',
  'air',
  'dielectric',
  'irrigation',
  'text',
]

const { projects: _, ...settings } = base.test ?? {}

/** What the tests of a room reach of it: `npm run coverage`, a step of the checks before a change lands. */
export default defineConfig({
  ...base,
  test: {
    ...settings,
    include: ROOMS.map((room) => `tests/${room}/**/*.test.ts`),
    // The modules are pure, so that test files may share them; to read them anew for each took longer than the tests.
    isolate: false,
    coverage: {
      ...base.test?.coverage,
      provider: 'v8',
      enabled: true,
      include: ROOMS.map((room) => `src/${room}/**/*.ts`),
      exclude: ['src/**/index.ts', 'src/**/generated/**'],
      thresholds: Object.fromEntries(ROOMS.map((room) => [`src/${room}/**`, { lines: 95 }])),
    },
  },
})
