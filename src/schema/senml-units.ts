import { isPorewaterError } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import { fromCanonical } from '../text/format.js'
import type { KindName } from '../text/kind-types.js'
import { quantity } from '../text/parse.js'

/**
 * Symbols of the SenML registry for quantities that this package knows, and how the text parser spells them: RFC 8428 section 12.1,
 * RFC 8798 sections 2 and 3. A registry symbol that is missing here has no kind in this package.
 */
const SPELLED: Readonly<Record<string, string>> = {
  m: 'm',
  kg: 'kg',
  g: 'g',
  s: 's',
  K: 'K',
  Hz: 'Hz',
  Pa: 'Pa',
  W: 'W',
  Cel: 'degC',
  m2: 'm^2',
  m3: 'm^3',
  l: 'L',
  'm/s': 'm/s',
  'm3/s': 'm^3/s',
  'l/s': 'L/s',
  'W/m2': 'W/m^2',
  'S/m': 'S/m',
  'kg/m3': 'kg/m^3',
  ms: 'ms',
  min: 'minute',
  h: 'h',
  MHz: 'MHz',
  kW: 'kW',
  'mm/h': 'mm/h',
  'm/h': 'm/h',
  hPa: 'hPa',
  mm: 'mm',
  cm: 'cm',
  km: 'km',
  'km/h': 'km/h',
  'mg/l': 'mg/L',
  'g/l': 'g/L',
  lx: 'lx',
  S: 'S',
  Ohm: 'ohm',
}
/**
 * Symbols of plain ratios, by what they count in. `%` is no percentage but another name of `/` (RFC 8428 section 12.1, note 2); percent
 * is `/100`.
 */
const RATIOS: Readonly<Record<string, number>> = { '/': 1, '%': 1, '/100': 100, '/1000': 1000, ppm: 1e6 }

/** The symbol in which a kind is sent: of the primary registry, and none that new senders should avoid. */
const SENT: Partial<Record<KindName, string>> = {
  Volume: 'm3',
  Length: 'm',
  Area: 'm2',
  Mass: 'kg',
  Duration: 's',
  Flow: 'm3/s',
  Pressure: 'Pa',
  VapourPressure: 'Pa',
  VapourPressureDeficit: 'Pa',
  SuctionHead: 'Pa',
  BulkEC: 'S/m',
  PoreWaterEC: 'S/m',
  SolutionEC: 'S/m',
  DrainEC: 'S/m',
  SaturatedExtractEC: 'S/m',
  MeasuredEC: 'S/m',
  BulkDensity: 'kg/m3',
  ParticleDensity: 'kg/m3',
  WaterDensity: 'kg/m3',
  OxygenConcentration: 'kg/m3',
  DissolvedSolids: 'kg/m3',
  AbsoluteHumidity: 'kg/m3',
  AirDensity: 'kg/m3',
  WaterDepth: 'm',
  Elevation: 'm',
  ApplicationRate: 'm/s',
  HydraulicConductivity: 'm/s',
  WindSpeed: 'm/s',
  Irradiance: 'W/m2',
  Frequency: 'Hz',
  Power: 'W',
  Conductance: 'S',
  Resistance: 'Ohm',
  Illuminance: 'lx',
  Wavelength: 'm',
  Latitude: 'lat',
  Longitude: 'lon',
  Temperature: 'Cel',
  RelativeHumidity: '%RH',
  Porosity: '/',
  AirFilledPorosity: '/',
  DegreeOfSaturation: '/',
  DrainFraction: '/',
  DepletionFraction: '/',
  MassFraction: '/',
  GroundFraction: '/',
  Share: '/',
  WaterContent: '/',
  WaterContentChange: '/',
  GravimetricWaterContent: '/',
  Permittivity: '/',
  LeafAreaIndex: '/',
  CropCoefficient: '/',
  OxygenSaturation: '/',
  Salinity: '/',
}

/** A quantity from a number and a SenML symbol, in the canonical unit of its kind. */
export function fromSenmlUnit(value: number, symbol: string | undefined, kind: KindName): number {
  const sent = SENT[kind]
  const text = sent === undefined || symbol === undefined ? undefined : textOf(value, symbol, sent)
  try {
    if (text !== undefined) return quantity(text, kind)
  } catch (error) {
    // A unit of another dimension is refused in the words of SenML; a value out of range in those of its kind.
    if (!isPorewaterError(error) || error.code !== 'bad-input') throw error
  }
  throw new InputError(
    'u',
    symbol === undefined ? 'is missing' : `"${symbol.slice(0, 40)}" is not a SenML unit of ${kind}`,
    sent === undefined ? `the SenML registry has no unit for ${kind}` : `send ${kind} in ${sent}`,
  )
}

function textOf(value: number, symbol: string, sent: string): string | undefined {
  // Both are degrees; only the symbol tells them apart.
  if (sent === 'lat' || sent === 'lon') return symbol === sent ? `${value} °` : undefined
  if (sent !== '/' && sent !== '%RH') return Object.hasOwn(SPELLED, symbol) ? `${value} ${SPELLED[symbol]}` : undefined
  if (symbol === '%RH' && sent === '%RH') return `${value} %`
  return Object.hasOwn(RATIOS, symbol) ? String(value / (RATIOS[symbol] as number)) : undefined
}

/** A quantity in the SenML unit of its kind. */
export function inSenmlUnit(value: number, kind: KindName): { value: number; symbol: string } {
  const symbol = SENT[kind]
  if (symbol === undefined)
    throw new InputError('kind', `${kind} has no unit in the SenML registry`, 'send it as a table or a record document')
  if (symbol === '/' || symbol === 'lat' || symbol === 'lon') return { value, symbol }
  if (symbol === '%RH') return { value: value * 100, symbol }
  const parsed = SPELLED[symbol] as string
  return { value: fromCanonical(value, kind, { shown: symbol, ucum: symbol, parsed }), symbol }
}
