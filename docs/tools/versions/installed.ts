import { execFile } from 'node:child_process'
import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** Runs a program to its end and gives what it printed; a failure says all that it said. */
export function run(program: string, args: readonly string[], cwd: string): Promise<string> {
  return new Promise((done, failed) => {
    execFile(program, args, { cwd, encoding: 'utf8', maxBuffer: 1 << 26 }, (error, stdout, stderr) =>
      error ? failed(new Error(`${program} ${args.join(' ')}\n${stdout}\n${stderr}\n${error.message}`)) : done(stdout),
    )
  })
}

/** Lays compilers and other versions of Node into a folder; without an answer of the registry nothing is known, and that is a failure. */
export async function installed(
  folder: string,
  nodes: readonly string[],
  packages: Readonly<Record<string, string>>,
  compilers: readonly string[],
): Promise<void> {
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  const system = process.platform === 'win32' ? 'win' : process.platform
  const wanted = [
    // The package of one system only: it holds the program itself, where `node` fetches it by a script.
    ...nodes.map((name) => `${name}@npm:node-${system}-${process.arch}@${name.slice(4)}`),
    ...compilers.map((name) => `${name}@npm:${packages[name]}`),
  ]
  const words = ['install', '--no-audit', '--no-fund', '--no-save', '--ignore-scripts', '--fetch-timeout=60000']
  try {
    await run('npm', [...words, ...wanted], folder)
  } catch (error) {
    throw new Error(
      `The package registry did not give ${wanted.join(', ')}: nothing is known of other versions. Try again when it answers.\n${(error as Error).message}`,
    )
  }
}

export function nodeOf(folder: string, name: string): string {
  return join(folder, 'node_modules', name, process.platform === 'win32' ? 'bin/node.exe' : 'bin/node')
}

/** The package as npm packs it, laid beside them; what it may depend on is that of the project. */
export async function packed(root: string, folder: string): Promise<void> {
  const told = await run('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], root)
  const [{ filename }] = JSON.parse(told) as [{ filename: string }]
  mkdirSync(join(folder, 'node_modules/porewater'), { recursive: true })
  await run('tar', ['xzf', filename, '-C', 'node_modules/porewater', '--strip-components=1'], folder)
  const here = readdirSync(join(folder, 'node_modules'))
  for (const dependency of ['mathjs', 'zod', 'd3-scale', 'd3-shape'].filter((name) => !here.includes(name)))
    symlinkSync(join(root, 'node_modules', dependency), join(folder, 'node_modules', dependency))
}
