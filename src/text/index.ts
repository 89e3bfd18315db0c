export { formatQuantity, type TextStyle } from './format.js'
export type { KindName, KindTypes } from './generated/kind-types.js'
export { parseQuantity } from './parse.js'
export { type CodedQuantity, fromUcum, toUcum } from './ucum.js'
