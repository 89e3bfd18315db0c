import type { Kind } from './kind.js'

/** Pressure of the water in a medium, as a head of water; zero at the air's, positive below standing water, negative where the medium holds the water by suction. Unit: cm. */
export type PressureHead = number & Kind<'pressure head in centimetres of water, above zero in standing water'>
