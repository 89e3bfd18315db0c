import { type Family, quoted } from './table.js'

/** The symbols of the SenML registry that units have, and the symbol in which each kind is sent. */
export function senmlFile(families: readonly Family[]): string {
  const symbols = new Map<string, string>()
  for (const { senml, symbol } of families.flatMap((family) => family.units)) {
    if (senml === undefined) continue
    const other = symbols.get(senml)
    if (other !== undefined && other !== symbol) throw new Error(`SenML's ${senml} is ${other} and ${symbol}`)
    symbols.set(senml, symbol)
  }
  const sent = families.flatMap((family) =>
    family.kinds.flatMap(({ name, senml }) => (senml === undefined ? [] : [[name, senml] as const])),
  )
  const key = (text: string) => (/^[A-Za-z_]\w*$/.test(text) ? text : quoted(text))
  return [
    "import type { KindName } from '../../text/generated/kind-types.js'",
    '',
    '/** Symbols of the SenML registry for units of this package: RFC 8428 section 12.1, RFC 8798 sections 2 and 3. */',
    'export const SENML_UNITS: Readonly<Record<string, string>> = {',
    ...[...symbols].map(([senml, symbol]) => `  ${key(senml)}: ${quoted(symbol)},`),
    '}',
    '',
    '/** The symbol in which a kind is sent: of the primary registry, and none that new senders should avoid. */',
    'export const SENT: Readonly<Partial<Record<KindName, string>>> = {',
    ...sent.map(([name, senml]) => `  ${name}: ${quoted(senml)},`),
    '}',
    '',
  ].join('\n')
}
