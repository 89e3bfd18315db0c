/**
 * Mistakes that real users make. Each line below an `@ts-expect-error` must be refused by the compiler; if one day it compiles,
 * `npm run types` fails. Nothing here is run.
 */
import {
  add,
  type BulkDensity,
  type BulkEC,
  type CodedFinding,
  type CropET,
  celsius,
  centimetres,
  centimetresOfPressureHead,
  centimetresOfSuction,
  type DailyNetRadiation,
  type DailyRadiation,
  type DrainEC,
  type DrainFraction,
  decisiemensPerMetre,
  explainRecordFinding,
  fahrenheit,
  fraction,
  gramsPerCubicCentimetre,
  hours,
  inCelsius,
  inLitres,
  inMillilitres,
  type instant,
  kelvinsOfChange,
  kilopascals,
  type Length,
  litres,
  litresPerHour,
  litresPerPlantDay,
  type MeasuredEC,
  megajoulesPerSquareMetreDay,
  metres,
  micromolesPerSquareMetreSecond,
  millimetresPerDay,
  minutes,
  type OneCodeEach,
  type ParticleDensity,
  type PoreWaterEC,
  type Porosity,
  type PressureHead,
  percent,
  permittivity,
  permittivityTopp1980,
  pF,
  type ReasonCode,
  type ReferenceET,
  type RelativeHumidity,
  ratio,
  rawReading,
  type SolutionEC,
  type SuctionHead,
  scale,
  shiftTemperature,
  subtract,
  sum,
  type Temperature,
  type TemperatureChange,
  temperatureDifference,
  type VapourPressure,
  type VapourPressureDeficit,
  type Volume,
  type WaterContent,
  type WaterContentChange,
  waterContent,
  waterContentChange,
  waterContentTopp1980,
  wattsPerSquareMetre,
} from 'porewater'

// @ts-expect-error a bare number is not a volume
export const a01: Volume = 5
// @ts-expect-error litres and metres do not add
add(litres(1), metres(1))
// @ts-expect-error minutes do not come off litres
subtract(litres(1), minutes(1))
// @ts-expect-error a list of litres and seconds has no sum
sum([litres(1), minutes(1)])
// @ts-expect-error a ratio needs one kind
ratio(litres(1), metres(1))
// @ts-expect-error temperatures are places on a scale and do not add
add(celsius(20), celsius(5))
// @ts-expect-error nor do they scale
scale(celsius(20), 2)
// @ts-expect-error 5 °C as a place is not 5 K of difference
shiftTemperature(celsius(20), celsius(5))
// @ts-expect-error a difference is not a place
export const a09: Temperature = temperatureDifference(celsius(20), celsius(15))
// @ts-expect-error a place is not a difference
export const a10: TemperatureChange = fahrenheit(68)
// @ts-expect-error a change of water content is not a water content
export const a11: WaterContent = waterContentChange(0.03)
// @ts-expect-error a water content is not a change
export const a12: WaterContentChange = waterContent(0.55)
// @ts-expect-error percent of what: a rise needs percentagePoints()
export const a13: WaterContentChange = percent(3)
const share = percent(15)
// @ts-expect-error a share of something unnamed is not a drain fraction
export const a14: DrainFraction = share
const pores: Porosity = percent(92)
// @ts-expect-error a porosity is not a drain fraction
export const a15: DrainFraction = pores
// @ts-expect-error a porosity is not a water content
export const a16: WaterContent = pores
const humidity: RelativeHumidity = percent(60)
// @ts-expect-error a relative humidity is not a water content
waterContentTopp1980(humidity)
const bulk: BulkEC = decisiemensPerMetre(0.8)
// @ts-expect-error bulk EC is not pore-water EC
export const a18: PoreWaterEC = bulk
const feed: SolutionEC = decisiemensPerMetre(2.4)
// @ts-expect-error feed EC is not drain EC
export const a19: DrainEC = feed
const measured: MeasuredEC = decisiemensPerMetre(2.1)
// @ts-expect-error EC as measured is not EC at 25 °C
export const a20: SolutionEC = measured
const ec = decisiemensPerMetre(2)
// @ts-expect-error EC of an unnamed water
export const a21: SolutionEC = ec
// @ts-expect-error a height is not a suction
export const a22: SuctionHead = centimetres(10)
// @ts-expect-error a suction is not a height
export const a23: Length = pF(2)
// @ts-expect-error a pressure of air is not a suction
export const a24: SuctionHead = kilopascals(1)
const reference: ReferenceET = millimetresPerDay(4)
// @ts-expect-error reference ET is not crop ET
export const a25: CropET = reference
// @ts-expect-error crop ET is not litres a plant
export const a26: CropET = litresPerPlantDay(1.8)
const vapour: VapourPressure = kilopascals(1.2)
// @ts-expect-error a vapour pressure is not a deficit
export const a27: VapourPressureDeficit = vapour
const solar: DailyRadiation = megajoulesPerSquareMetreDay(18)
// @ts-expect-error solar radiation is not net radiation
export const a28: DailyNetRadiation = solar
// @ts-expect-error W/m² is not MJ/m²/d
export const a29: DailyRadiation = wattsPerSquareMetre(250)
// @ts-expect-error photons are not watts
export const a30: DailyRadiation = micromolesPerSquareMetreSecond(500)
// @ts-expect-error raw counts are not a permittivity
waterContentTopp1980(rawReading(640))
// @ts-expect-error a water content is not a permittivity
waterContentTopp1980(waterContent(0.45))
// @ts-expect-error a permittivity is not a water content
permittivityTopp1980(permittivity(20))
// @ts-expect-error a flow is not a volume
inLitres(litresPerHour(2))
// @ts-expect-error a length has no millilitres
inMillilitres(centimetres(10))
// @ts-expect-error a difference is not read on the scale
inCelsius(kelvinsOfChange(5))
const dryMass: BulkDensity = gramsPerCubicCentimetre(0.1)
// @ts-expect-error bulk density is not particle density
export const a37: ParticleDensity = dryMass
// @ts-expect-error a duration is not an instant
export const a38: ReturnType<typeof instant> = hours(1)
// @ts-expect-error text is not a number of litres
litres('5')
// @ts-expect-error a constructor takes one number, not a unit
litres(5, 'gal')
// @ts-expect-error a list is not a number
litres([1, 2])
// @ts-expect-error suction from a water content needs a retention curve
export const a42: SuctionHead = centimetresOfSuction(waterContent(0.5), 1)
// @ts-expect-error a fraction kept in a variable must say of what
export const a43: RelativeHumidity = ((value) => value)(fraction<Porosity>(0.6))
// @ts-expect-error a pressure head has the other sign than a suction
export const a44: SuctionHead = centimetresOfPressureHead(-10)
// @ts-expect-error a suction has the other sign than a pressure head
export const a45: PressureHead = centimetresOfSuction(10)
// @ts-expect-error half an amount is made by scale()
export const a46: Volume = litres(1) / 2
// @ts-expect-error a share is no change of water content
export const a47: WaterContentChange = percent(3)
// @ts-expect-error a number of a finding comes with its unit
export const a48: CodedFinding<'late'> = { code: 'late', level: 'note', value: 3 }
// @ts-expect-error a code belongs to one family of a topic
export const a49: OneCodeEach<[ReasonCode<'late' | 'early'>, ReasonCode<'late'>]> = { code: 'early' }
// @ts-expect-error a reason is a code, no sentence
explainRecordFinding({ code: 'the water content does not fall' })
