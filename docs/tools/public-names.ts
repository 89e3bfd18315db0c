import * as core from 'porewater'
import * as catalogue from 'porewater/catalogue'
import * as chart from 'porewater/chart'
import * as schema from 'porewater/schema'
import * as text from 'porewater/text'

/** Every public name, as an example or a guide sees it. */
export const publicNames: Readonly<Record<string, unknown>> = { ...catalogue, ...chart, ...schema, ...text, ...core }
