export { formatQuantity, type TextStyle } from './format.js'
export type { KindName, KindTypes } from './kind-types.js'
export { quantity } from './parse.js'
export { type CodedQuantity, fromUcum, toUcum } from './ucum.js'
