/** A number of a record, or null where it is missing: JSON has no NaN. NaN counts as missing too. */
export type Missable = number | null

/** Climate over time, on a time axis of its own. Columns that nobody measures are left out. */
export interface ZoneClimate {
  /** Times, rising. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Air temperature. Unit: °C. Range: any. */
  readonly airTemperature?: ArrayLike<Missable>
  /** Relative humidity. Unit: 1. Range: any. */
  readonly relativeHumidity?: ArrayLike<Missable>
  /** Solar radiation on the plants, or outside. Unit: W/m². Range: any. */
  readonly irradiance?: ArrayLike<Missable>
  /** Wind speed at 2 m. Unit: m/s. Range: any. */
  readonly windSpeed?: ArrayLike<Missable>
}

/** Water given to and drained from one container, by opening of the valve or by day. */
export interface ZoneWatering {
  /** When the valve opened, or the beginning of the day. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Water given to one container. Unit: L. Range: any. */
  readonly given: ArrayLike<Missable>
  /** Water drained from one container. Unit: L. Range: any. */
  readonly drained?: ArrayLike<Missable>
  /** Electrical conductivity of the feed at 25 °C. Unit: dS/m. Range: any. */
  readonly feedEC?: ArrayLike<Missable>
  /** Electrical conductivity of the drain at 25 °C. Unit: dS/m. Range: any. */
  readonly drainEC?: ArrayLike<Missable>
}

/** Radiation that is expected, each forecast as it was made. Of those for a day, the newest that was made before it begins counts. */
export interface ZoneForecast {
  /** When it was made; it counts in the 24 hours before the day that it is for. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** A moment of the local day that it is for, such as its noon. Unit: s. Range: any. */
  readonly day: ArrayLike<Missable>
  /** Mean radiation of that day, nights and all, where and as it is measured; lamps not counted. Unit: W/m². Range: any. */
  readonly irradiance: ArrayLike<Missable>
}

/**
 * The record of a zone: plain lists. Readings come in the order of time; what is out of order is left out and counted. A column is as long
 * as its times.
 */
export interface ZoneRecord {
  /** Times of the readings, rising. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Readings of each probe by its name: water content, or what its calibration takes. Unit: any. Range: any. */
  readonly probes: Readonly<Record<string, ArrayLike<Missable>>>
  /** Temperature of the root zone at the times of the readings. Unit: °C. Range: any. */
  readonly rootTemperature?: ArrayLike<Missable>
  /** Climate on times of its own. */
  readonly climate?: ZoneClimate
  /** The log of water given and drained. */
  readonly watering?: ZoneWatering
  /** Forecasts of radiation, with which the use of the next day is foreseen. */
  readonly forecast?: ZoneForecast
}

/** One thing that becomes known of a zone. */
export type ZoneEntry =
  | {
      readonly kind: 'reading'
      readonly time: number
      /** Readings by the names of the probes; a probe that is left out is missing. */
      readonly probes: Readonly<Record<string, Missable>>
      readonly rootTemperature?: Missable
    }
  | {
      readonly kind: 'climate'
      readonly time: number
      readonly airTemperature?: Missable
      readonly relativeHumidity?: Missable
      readonly irradiance?: Missable
      readonly windSpeed?: Missable
    }
  | {
      readonly kind: 'watering'
      readonly time: number
      readonly given: Missable
      readonly drained?: Missable
      readonly feedEC?: Missable
      readonly drainEC?: Missable
    }
  | { readonly kind: 'forecast'; readonly time: number; readonly day: Missable; readonly irradiance: Missable }
