import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { run } from './installed.js'

/** How modules are resolved; the first way takes the typings of ESM and of CJS. */
export const MODULES = [
  ['nodenext', 'nodenext'],
  ['node16', 'node16'],
  ['esnext', 'bundler'],
] as const

const USE = `import { litres, millilitres, add, inLitres, sizeShot, percent, waterContentChange, litresPerHour, type Volume } from 'porewater'
import { waterContentTopp1980 } from 'porewater/dielectric'
import { permittivity, metres } from 'porewater/quantity'
import { catalogue } from 'porewater/catalogue'
import { readDocument } from 'porewater/schema'
import { chartRetention } from 'porewater/chart'
import { parseQuantity } from 'porewater/text'
const both: Volume = add(litres(1), millilitres(500))
// @ts-expect-error a length is not a volume
add(litres(1), metres(1))
const shot = sizeShot({ substrateVolume: litres(10), rise: waterContentChange(0.03), drainFraction: percent(15), emitterFlow: litresPerHour(2), emitters: 2 })
console.log(inLitres(both), waterContentTopp1980(permittivity(20)), shot.runTime, catalogue.length)
console.log(readDocument('container', { version: 1, shape: 'box', length: 100, width: 15, height: 7.5 }), parseQuantity('500 mL', 'Volume'), chartRetention)
`

export function writeUses(folder: string): void {
  writeFileSync(join(folder, 'use.ts'), USE)
  writeFileSync(join(folder, 'use.cts'), USE)
}

/** A program of a user, strict and with the typings themselves checked, by one compiler. */
export async function checkCompiler(
  folder: string,
  compiler: string,
  [module, moduleResolution]: (typeof MODULES)[number],
): Promise<void> {
  const compilerOptions = {
    strict: true,
    skipLibCheck: false,
    noEmit: true,
    module,
    moduleResolution,
    target: 'es2022',
    lib: ['es2022', 'dom'],
    types: [],
  }
  const files = moduleResolution === 'bundler' ? ['use.ts'] : ['use.ts', 'use.cts']
  const project = `${compiler}.json`
  writeFileSync(join(folder, project), JSON.stringify({ compilerOptions, files }))
  await run('node', [join(folder, 'node_modules', compiler, 'bin/tsc'), '-p', project], folder)
}
