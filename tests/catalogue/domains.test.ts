import { type CatalogueEntry, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { faultsOfRange, isProbed } from './range-probe.js'

const argumentsOf = rememberedCalls()
const functionOf = ({ name }: CatalogueEntry) => publicNames[name] as (...args: readonly unknown[]) => unknown

const probed = catalogue.flatMap((entry) =>
  entry.arguments
    .filter(isProbed)
    .map((field) => [`${entry.name}: ${field.path} in ${field.range}`, entry, field] as const),
)

describe('documented ranges are the coded ones', () => {
  it.each(probed)('%s', async (_, entry, field) => {
    const args = await argumentsOf(entry)
    expect(args, 'the example calls the function').toBeDefined()
    expect(faultsOfRange(entry, functionOf(entry), args!, field)).toEqual([])
  })
})
