import type { CatalogueEntry } from 'porewater/catalogue'
import { runExample } from './examples.js'
import { publicNames } from './public-names.js'

/** The arguments with which a function is called in its own example. */
export async function callInExample(entry: CatalogueEntry): Promise<unknown[] | undefined> {
  const original = publicNames[entry.name] as (...args: unknown[]) => unknown
  let seen: unknown[] | undefined
  const spy = (...args: unknown[]) => {
    seen ??= args
    return original(...args)
  }
  await runExample(entry.example, { ...publicNames, [entry.name]: spy })
  return seen
}

/** The same, with each example run once, however many of its arguments are asked after. */
export function rememberedCalls(): typeof callInExample {
  const known = new Map<string, ReturnType<typeof callInExample>>()
  return (entry) => {
    const call = known.get(entry.name) ?? callInExample(entry)
    known.set(entry.name, call)
    return call
  }
}
