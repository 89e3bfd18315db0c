export { validityJonesHarris1992, waterDensityJonesHarris1992 } from './density-jones-harris-1992.js'
export { validityKell1975, waterDensityKell1975 } from './density-kell-1975.js'
export { validityTanaka2001, waterDensityTanaka2001 } from './density-tanaka-2001.js'
export {
  type AeratedWater,
  type AeratedWaterSample,
  oxygenSaturationBensonKrause1984,
  oxygenShareOfSaturation,
  validityBensonKrause1984,
} from './oxygen-benson-krause-1984.js'
export { validityCrc2005, waterPermittivityCrc2005 } from './permittivity-crc-2005.js'
export { validityIapwsR8, type WaterState, waterPermittivityIapwsR8 } from './permittivity-iapws-r8.js'
export { validityIapwsSr6, waterPermittivityIapwsSr6 } from './permittivity-iapws-sr6.js'
export { validityKaatze1989, waterPermittivityKaatze1989 } from './permittivity-kaatze-1989.js'
export {
  validityMalmbergMaryott1956,
  waterPermittivityMalmbergMaryott1956,
  waterPermittivitySlopeMalmbergMaryott1956,
} from './permittivity-malmberg-maryott-1956.js'
export { validityWeast1986, waterPermittivityWeast1986 } from './permittivity-weast-1986.js'
export { salinityUsgs2011 } from './salinity-usgs-2011.js'
export { waterSurfaceTensionIapws } from './surface-tension-iapws.js'
export { waterViscosityIapwsSr6 } from './viscosity-iapws-sr6.js'
