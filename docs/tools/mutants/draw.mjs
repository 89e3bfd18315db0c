import { createHash } from 'node:crypto'

/**
 * Lets mutation testing try only some of the mutants: those with the lowest rank, which hangs on the seed and on the change alone, so
 * that every change is as likely as any other. The rest is reported as not compiling and counts for nothing.
 */
class DrawnMutants {
  #drawn = undefined

  async init() {}

  /** Called once, with every mutant that some test reaches. */
  async group(mutants) {
    if (this.#drawn !== undefined) throw new Error('mutants came in two parts: the draw would not be fair')
    const ranked = [...mutants].sort((a, b) => rankOf(a).localeCompare(rankOf(b)))
    this.#drawn = new Set(ranked.slice(0, Number(process.env.POREWATER_MUTANTS ?? 150)).map(({ id }) => id))
    return [mutants.map(({ id }) => id)]
  }

  async check(mutants) {
    return Object.fromEntries(
      mutants.map(({ id }) => [
        id,
        this.#drawn.has(id) ? { status: 'passed' } : { status: 'compileError', reason: 'not drawn' },
      ]),
    )
  }
}

function rankOf({ fileName, location: { start, end }, replacement }) {
  const file = fileName.slice(fileName.lastIndexOf('src/'))
  const place = [start.line, start.column, end.line, end.column].join(':')
  return createHash('sha256')
    .update(`${process.env.POREWATER_SEED ?? 1} ${file} ${place} ${replacement}`)
    .digest('hex')
}

export const strykerPlugins = [{ kind: 'Checker', name: 'drawn', injectableClass: DrawnMutants }]
