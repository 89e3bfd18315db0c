import { catalogue } from '../catalogue/catalogue.js'
import * as core from '../index.js'
import * as text from '../text/index.js'
import { helpText } from './help.js'

/** Everything that can be typed in a session: the whole library, and what explains it. */
export function sessionNames(): Record<string, unknown> {
  return { ...core, ...text, help }
}

/** Help for a function, given itself or by name; without one, how to begin. */
export function help(about?: unknown): string {
  const name = typeof about === 'function' ? about.name : about
  if (name === undefined) return WELCOME
  const entry = catalogue.find((one) => one.name === name)
  if (entry !== undefined) return helpText(entry)
  const close = catalogue
    .filter((one) => one.name.toLowerCase().includes(String(name).toLowerCase()))
    .map((one) => one.name)
  return close.length > 0
    ? `There is no function "${String(name)}". Close to it: ${close.slice(0, 20).join(', ')}`
    : `There is no function "${String(name)}".`
}

export const WELCOME = [
  'Every function of porewater is here. Try:',
  '  waterContentTopp1980(permittivity(20))',
  "  quantity('150 mL', 'Volume')",
  '  help(waterContentTopp1980)',
  '.exit ends the session.',
].join('\n')
