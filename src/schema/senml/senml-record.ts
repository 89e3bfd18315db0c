import type { SenmlUnitAndValue } from '../terms.js'
/** A record of a SenML pack, with the labels of RFC 8428, Table 1. */
export interface SenmlRecord extends SenmlUnitAndValue {
  /** Base name, put before the names of this and later records. */
  readonly bn?: string
  /** Base time, added to the times of this and later records. Unit: s. Range: any. */
  readonly bt?: number
  /** Base unit, for records that have none. */
  readonly bu?: string
  /** Base value, added to the values of this and later records. Unit: that of the record. Range: any. */
  readonly bv?: number
  /** Base sum, added to the sums of this and later records. Unit: that of the record times s. Range: any. */
  readonly bs?: number
  /** Version of the format, 10 where it is missing. Unit: 1. Range: any. */
  readonly bver?: number
  /** Name. */
  readonly n?: string
  /** Time; below 2^28 it is counted from now. Unit: s. Range: any. */
  readonly t?: number
}

/** A record with its own full name and an absolute time, without base fields: RFC 8428, section 4.6. */
export interface ResolvedSenmlRecord extends SenmlUnitAndValue {
  /** Full name. */
  readonly n: string
  /** When, in seconds since 1970 in universal time. Unit: s. Range: any. */
  readonly t: number
  /** Version of the format, where it is not 10. Unit: 1. Range: any. */
  readonly bver?: number
}

/** The version of the format that RFC 8428 defines. */
export const SENML_VERSION = 10
/** That version with the feature of secondary units of RFC 9100: 10 + 2^4. */
export const SENML_VERSION_SECONDARY_UNITS = 26
/** Times below this are counted from now: RFC 8428, section 4.5.3. */
export const MIN_ABSOLUTE_TIME = 2 ** 28
/** Names of RFC 8428, section 4.5.1. */
export const SENML_NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/
