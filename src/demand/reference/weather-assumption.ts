export interface Assumed<Code extends string, About extends string, Unit extends string> {
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

/** What was not given of a day or an hour and had to be estimated. `explainWeatherFinding` puts it into words. */
export type WeatherAssumption =
  | (Assumed<'assumed-humidity', 'vapourPressure', 'kPa'> & {
      /** How far the dew point was taken below the lowest temperature. Unit: K. Range: any. */
      readonly aridity: number
    })
  | (Assumed<'assumed-radiation', 'solar', 'MJ/m²/d'> & {
      /** Where the site lies. */
      readonly exposure: 'interior' | 'coastal' | 'island'
    })
  | Assumed<'assumed-wind', 'wind', 'm/s'>
  | (Assumed<'assumed-cloudiness', 'relativeShortwaveBeforeSunset', '1'> & {
      /** Height of the sun above the horizon. Unit: rad. Range: any. */
      readonly sunHeight: number
    })
  | Assumed<'assumed-soil-heat', 'before', 'MJ/m²/d'>
