import * as catalogueNames from '../catalogue/index.js'
import * as chart from '../chart/index.js'
import * as core from '../index.js'
import * as schema from '../schema/index.js'
import * as text from '../text/index.js'

/** Every public name of the package. */
export const LIBRARY: Readonly<Record<string, unknown>> = { ...core, ...text, ...chart, ...schema, ...catalogueNames }
