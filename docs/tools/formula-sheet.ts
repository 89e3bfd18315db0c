/** Writes docs/guides/formula-sheet.md from the catalogue: every equation with its units, range, validity and source. */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { type CatalogueEntry, catalogue, sourceInFull } from '../../src/catalogue/index.js'

const TITLES: Readonly<Record<string, string>> = {
  air: 'Air, radiation and light',
  control: 'Control',
  demand: 'Demand of plants',
  dielectric: 'Dielectric probes and electrical conductivity',
  flow: 'Flow in a container',
  irrigation: 'Irrigation, drain and salts',
  medium: 'Growing media and containers',
  probe: 'Calibration and siting of probes',
  quantity: 'Quantities',
  record: 'Records',
  uncertainty: 'Uncertainty',
  water: 'Water',
}

function section(entry: CatalogueEntry): string {
  const numbers = entry.arguments.filter((field) => field.unit !== undefined)
  const inputs = numbers.map(
    (field) => `\`${field.path}\` ${field.unit}${field.range && field.range !== 'any' ? `, ${field.range}` : ''}`,
  )
  return [
    `### ${entry.name}`,
    entry.summary,
    ...entry.equation
      .split('\n')
      .filter(Boolean)
      .map((line) => `\`\`\`math\n${line}\n\`\`\``),
    `${inputs.length > 0 ? `From ${inputs.join('; ')}. ` : ''}Gives ${entry.result.text.replace(/\.$/, '') || 'a result'}${entry.result.unit ? `, ${entry.result.unit}` : ''}.${entry.validity ? ` Valid for: ${entry.validity}` : ''}`,
    `Source: ${entry.sources.map(sourceInFull).join('; ')}`,
  ].join('\n\n')
}

const pages = Object.entries(TITLES).flatMap(([topic, title]) => {
  const entries = catalogue.filter((entry) => entry.topic === topic && entry.equation !== '' && topic !== 'quantity')
  return entries.length === 0 ? [] : [`## ${title}\n\n${entries.map(section).join('\n\n')}`]
})
writeFileSync(
  fileURLToPath(new URL('../guides/formula-sheet.md', import.meta.url)),
  `# Formula sheet\n\nMade from the documentation of the functions, whose examples and ranges the tests check. Conversions of units are left out.\n\n${pages.join('\n\n')}\n`,
)
