/** Writes the bill of materials of a release beside its package: `porewater-<version>.cdx.json`, in CycloneDX, from the lock file. */
import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import packageJson from '../../package.json' with { type: 'json' }

interface Component {
  readonly 'bom-ref': string
  readonly name: string
  readonly version: string
  readonly licenses?: readonly unknown[]
  readonly hashes?: readonly unknown[]
}

interface Bill {
  readonly metadata: { component: Component & { name: string } }
  components: Component[]
  dependencies: { readonly ref: string; dependsOn: string[] }[]
}

/** What npm knows of the package and of all that it may bring. Left out is what serves development alone, which npm cannot tell where one package serves both. */
export function billOfMaterials(): Bill {
  const words = ['sbom', '--package-lock-only', '--sbom-format=cyclonedx', '--sbom-type=library']
  const root = fileURLToPath(new URL('../../', import.meta.url))
  const bill: Bill = JSON.parse(execFileSync('npm', words, { cwd: root, encoding: 'utf8', maxBuffer: 1e8 }))
  const { component } = bill.metadata
  // npm takes the name of the folder.
  component.name = packageJson.name
  const below = new Map(bill.dependencies.map(({ ref, dependsOn }) => [ref, dependsOn]))
  const wanted = Object.keys(packageJson.optionalDependencies)
  const first = (below.get(component['bom-ref']) ?? []).filter((ref) => wanted.includes(ref.replace(/@[^@]*$/, '')))
  const reached = new Set(first)
  for (const ref of reached) for (const next of below.get(ref) ?? []) reached.add(next)
  bill.components = bill.components.filter((one) => reached.has(one['bom-ref']))
  bill.dependencies = bill.dependencies.flatMap((one) =>
    one.ref === component['bom-ref'] ? [{ ...one, dependsOn: first }] : reached.has(one.ref) ? [one] : [],
  )
  return bill
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const bill = billOfMaterials()
  const file = `${packageJson.name}-${packageJson.version}.cdx.json`
  writeFileSync(file, `${JSON.stringify(bill, null, 2)}\n`)
  process.stdout.write(`${file}: ${bill.components.length} packages\n`)
}
