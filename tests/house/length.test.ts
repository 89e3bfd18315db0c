import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { folderOf, parse, sourceFiles } from '../../docs/tools/house/source-files.js'

const LONG_FUNCTION = 40
const LONG_FILE = 150

/** Functions of more than 40 lines, each with the reason why it is not parted. One that has become short leaves the list. */
const LONG: Record<string, Record<string, string>> = {
  'the numbers of one step stay in variables of one loop: with the formulas in functions of their own it took up to twice as long':
    {
      'src/air/light-sums.ts': 'integrate',
      'src/demand/reference/hourly-series-asce-2005.ts': 'hourlySeriesAsce2005',
      'src/flow/column/equations/equations.ts': 'columnEquations',
      'src/flow/column/step/newton.ts': 'columnNewton',
      'src/flow/column/equations/storage.ts': 'fillStorage',
      'src/numerics/runge-kutta.ts': 'followPair',
      'src/record/dry-down/find-dry-downs.ts': 'dryStretches',
    },
  'a frame around short functions, which share what the frame has checked or counts': {
    'src/medium/curves/durner-1994.ts': 'durner1994',
    'src/medium/curves/fredlund-xing-1994.ts': 'fredlundXing1994',
    'src/control/diagnosis/state/recent-shots.ts': 'recentShots',
    'src/rehearsal/world/containers.ts': 'containersOf',
    'src/rehearsal/run/run-controller.ts': 'runController',
    'src/rehearsal/world/sense.ts': 'probesOf',
    'src/rehearsal/outcome/tally.ts': 'tallyOf',
    'src/rehearsal/world/valve.ts': 'valveOf',
    'src/rehearsal/world/world.ts': 'worldOf',
    'src/rehearsal/world/water-course.ts': 'waterCourse',
  },
  'one object with many properties, each worked out in a line or two': {
    'src/control/watering/look.ts': 'look',
    'src/control/watering/probes/probes.ts': 'takeReading',
    'src/control/watering/start.ts': 'startState',
  },
  'one description of panels, rules and words, read from top to bottom': {
    'src/chart/calibration.ts': 'chartCalibration',
    'src/chart/day.ts': 'chartDay',
    'src/chart/panel.ts': 'drawPanel',
    'src/chart/panels.ts': 'stackPanels',
    'src/chart/rehearsal.ts': 'chartRehearsal',
    'src/chart/retention.ts': 'chartRetention drawContainer',
  },
  'one pass over text or records with one branch for each mark, as the standard lists them': {
    'src/schema/csv/csv-lines.ts': 'quotedRecord',
    'src/schema/senml/resolve-senml.ts': 'resolvedFrom',
  },
}

/**
 * How many files of more than 150 lines each folder has at most: numbers that only fall. Lists of names, tables and indexes are no code
 * to read through, and do not count.
 */
const LONG_FILES: Record<string, number> = {
  chart: 4,
  control: 10,
  demand: 7,
  flow: 3,
  irrigation: 2,
  medium: 2,
  numerics: 1,
  probe: 1,
  record: 4,
  rehearsal: 1,
  repl: 3,
  schema: 8,
  uncertainty: 1,
  zone: 5,
}

/** Functions of a file that are longer than they should be, by name; a function without one has that of what holds it. */
function longFunctions(path: string, code: string): string[] {
  const source = parse(path, code)
  const lineOf = (at: number) => source.getLineAndCharacterOfPosition(at).line
  const found: string[] = []
  const visit = (node: ts.Node, holder: string) => {
    const name = nameOf(node) ?? holder
    if (ts.isFunctionLike(node) && 'body' in node && node.body !== undefined) {
      const lines = lineOf(node.end) - lineOf(node.getStart()) + 1
      if (lines > LONG_FUNCTION) found.push(`${path} ${name}`)
    }
    node.forEachChild((child) => visit(child, name))
  }
  visit(source, '')
  return found
}

function nameOf(node: ts.Node): string | undefined {
  const named = ts.isFunctionDeclaration(node) || ts.isVariableDeclaration(node) || ts.isPropertyAssignment(node)
  return named && node.name !== undefined && ts.isIdentifier(node.name) ? node.name.text : undefined
}

const isList = (path: string) => /\/index\.ts$|table\.ts$|\/generated\//.test(path)
const files = sourceFiles().filter(({ path }) => path.split('/').length > 2 && !isList(path))

describe('what is long', () => {
  it('is a function that has a reason, in place', () => {
    const told = Object.values(LONG).flatMap((places) =>
      Object.entries(places).flatMap(([path, names]) => names.split(' ').map((name) => `${path} ${name}`)),
    )
    expect(files.flatMap(({ path, code }) => longFunctions(path, code)).sort()).toEqual(told.sort())
  })
  it.each([...new Set(files.map(({ path }) => folderOf(path)))].sort())(
    'in %s are no more files than there were',
    (folder) => {
      const own = files.filter(({ path }) => folderOf(path) === folder)
      const long = own.filter(({ code }) => code.split('\n').length - 1 > LONG_FILE).map(({ path }) => path)
      expect(long.length, long.join('\n')).toBeLessThanOrEqual(LONG_FILES[folder] ?? 0)
    },
  )
  it('is found, also inside another function and without a name', () => {
    const body = 'a()\n'.repeat(41)
    expect(longFunctions('x.ts', `function outer() {\n${body}}`)).toEqual(['x.ts outer'])
    expect(longFunctions('x.ts', `const made = () => ({ inner: () => {\n${body}} })`)).toHaveLength(2)
    expect(longFunctions('x.ts', `function short() {\n${'a()\n'.repeat(38)}}`)).toEqual([])
  })
})
