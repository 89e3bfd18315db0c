import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { notices } from '../../docs/tools/notices.js'
import { billOfMaterials } from '../../docs/tools/sbom.js'
import packageJson from '../../package.json' with { type: 'json' }

const root = fileURLToPath(new URL('../../', import.meta.url))

it('the notices name every package inside the built files, with its licence', async () => {
  const written = readFileSync(`${root}THIRD-PARTY-NOTICES.md`, 'utf8')
  expect(written).toBe(await notices())
  expect(written).toMatch(/## zod\n\nMIT, in `dist\/repl\/bin\.js`[\s\S]*Permission is hereby granted/)
  expect(written).toMatch(/## d3-scale\n\nISC/)
}, 60_000)

it('every other file of the package leaves the code of others outside', () => {
  const files = readdirSync(`${root}dist`, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.c?js$/.test(name) && !/\.iife\.js$|^repl\/bin\.js$/.test(name),
  )
  expect(files.length).toBeGreaterThan(30)
  // The bundler writes the path of each file that it put in.
  const foreign = files.filter((name) => /^\/\/ .*node_modules\//m.test(readFileSync(`${root}dist/${name}`, 'utf8')))
  expect(foreign).toEqual([])
})

it('the bill of materials lists what the package may bring, each with licence and hash', () => {
  const { metadata, components } = billOfMaterials()
  expect(metadata.component).toMatchObject({ name: 'porewater', version: packageJson.version })
  for (const name of Object.keys(packageJson.optionalDependencies))
    expect(components.find((one) => one.name === name)).toMatchObject({
      version: expect.stringMatching(/^\d+\.\d+\.\d+/),
      licenses: [expect.anything()],
      hashes: [expect.anything()],
    })
}, 60_000)
