/** An input that was missing, and what was taken in its place. */
export interface AssumedInput<Code extends string, About extends string, Unit extends string> {
  /** What had to be assumed. */
  readonly code: Code
  /** How much it matters. */
  readonly level: 'note' | 'caution'
  /** Which input is missing. */
  readonly about: About
  /** What was taken instead. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** Unit of the value. */
  readonly unit: Unit
}

/** What was not given of a day or an hour and had to be estimated. `explainDemandFinding` puts it into words. */
export type WeatherAssumption =
  | (AssumedInput<'assumed-humidity', 'vapourPressure', 'kPa'> & {
      /** How far the dew point was taken below the lowest temperature. Unit: K. Range: any. */
      readonly aridity: number
    })
  | (AssumedInput<'assumed-radiation', 'solar', 'MJ/m²/d'> & {
      /** Where the site lies. */
      readonly exposure: 'interior' | 'coastal' | 'island'
    })
  | AssumedInput<'assumed-wind', 'wind', 'm/s'>
  | (AssumedInput<'assumed-cloudiness', 'relativeShortwaveBeforeSunset', '1'> & {
      /** Height of the sun above the horizon. Unit: rad. Range: any. */
      readonly sunElevation: number
    })
  | AssumedInput<'assumed-soil-heat', 'before', 'MJ/m²/d'>
