import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** Files that take from ten seconds to a minute though they are no longer than others, the longest first. */
const LONG = [
  'engines/explorer',
  'package/consumer',
  'pages/documentation',
  'pages/landing',
  'engines/ten-thousand-zones',
  'pages/firefox',
  'rehearsal/watering',
  'catalogue/javascript',
  'catalogue/domains',
  'control/diagnosis',
  'control/diagnosis-lies',
]

/** Begins with what takes long, so that no processor is left without work while one file ends. In a fresh clone only sizes are known. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification) => {
      const found = LONG.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`))
      return found < 0 ? LONG.length : found
    }
    const sorted = await super.sort(files)
    const projects = [...new Set(sorted.map(({ project }) => project))]
    return projects.flatMap((own) =>
      sorted.filter(({ project }) => project === own).sort((a, b) => place(a) - place(b)),
    )
  }
}
