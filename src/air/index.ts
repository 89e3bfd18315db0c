export {
  actualVapourPressureFao56,
  type DayHumidity,
  type DayTemperatures,
  meanSaturationVapourPressureFao56,
  type VapourPressures,
  vapourPressureDeficit,
} from './actual-vapour-pressure-fao56.js'
export { atmosphericPressureFao56 } from './atmospheric-pressure-fao56.js'
export {
  type ClearSkyInput,
  clearSkyRadiationFao56,
  type NetLongwaveInput,
  type NetShortwaveInput,
  netLongwaveRadiationFao56,
  netShortwaveRadiationFao56,
} from './net-radiation-fao56.js'
export { psychrometricConstantFao56 } from './psychrometric-constant-fao56.js'
export {
  dewPointFao56,
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
} from './saturation-vapour-pressure-fao56.js'
export {
  dayLengthFao56,
  extraterrestrialRadiationFao56,
  type SolarDay,
  type SolarGeometry,
  solarGeometryFao56,
} from './solar-geometry-fao56.js'
export { type SunshineInput, solarRadiationFromSunshineFao56 } from './solar-radiation-from-sunshine-fao56.js'
export { type MeasuredWind, windSpeedAtTwoMetresFao56 } from './wind-at-two-metres-fao56.js'
