#!/usr/bin/env node
// Loaded in a second step, so that a package that was left out at installing is told by its name.
import('./main.js').then(({ main }) => main(process.argv.slice(2)), tellWhatIsMissing)

function tellWhatIsMissing(error: { readonly code?: string; readonly message: string }): void {
  if (!/MODULE_NOT_FOUND$/.test(error.code ?? '')) throw error
  const [, name = 'a package'] = /Cannot find (?:package|module) '([^']+)'/.exec(error.message) ?? []
  process.stderr.write(
    `The command needs ${name}, which was left out: npm install acorn d3-scale d3-shape mathjs zod\n`,
  )
  process.exitCode = 2
}
