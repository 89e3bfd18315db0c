import entries from './entries.json' with { type: 'json' }
import type { CatalogueEntry } from './entry.js'

/** Every public function of the package, described by its own documentation, topic by topic in alphabetical order. */
export const catalogue: readonly CatalogueEntry[] = entries as readonly CatalogueEntry[]
