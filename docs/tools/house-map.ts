/**
 * Writes the map of the house from the imports of `src`: `.dependency-map.json`, which the build enforces, and the last column of the
 * table in DEVELOPERS.md. `npm run house:map` after a new import between folders; whether it may stand is for the reviewer to say.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { mapInCode } from './house/map-in-code.js'
import { root } from './house/source-files.js'

const found = mapInCode()
const known = JSON.parse(readFileSync(`${root}.dependency-map.json`, 'utf8')) as Record<string, string[]>
const order = [...new Set([...Object.keys(known), ...Object.keys(found)])].filter((folder) => folder in found)
const lines = order.map((folder) => `  "${folder}": ${JSON.stringify(found[folder]).replaceAll(',', ', ')}`)
writeFileSync(`${root}.dependency-map.json`, `{\n${lines.join(',\n')}\n}\n`)

const guide = readFileSync(`${root}DEVELOPERS.md`, 'utf8')
writeFileSync(
  `${root}DEVELOPERS.md`,
  guide.replace(/^\| `src\/([a-z]+)` \|([^|]*)\|[^|]*\|$/gm, (row, folder: string, idea: string) => {
    const from = found[folder]
    return from === undefined ? row : `| \`src/${folder}\` |${idea}| ${from.join(', ') || 'nothing'} |`
  }),
)
