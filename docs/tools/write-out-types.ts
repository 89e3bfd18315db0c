/** Writes the documentation in the types of the built package out in full, so that an editor shows its user the work and not its key. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { catalogue } from '../../src/catalogue/catalogue.js'
import { byName, writtenOut } from './written-out.js'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))
const entries = byName(catalogue)
for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((one) => /\.d\.c?ts$/.test(one)))
  writeFileSync(`${dist}${name}`, writtenOut(readFileSync(`${dist}${name}`, 'utf8'), entries))
