export { catalogue } from './catalogue.js'
export type { CatalogueEntry, CatalogueField } from './entry.js'
