export { type CropETInput, cropET, type PlantUseInput, waterUsePerPlant } from './crop-et.js'
export { type DailyReferenceET, type DailyWeather, dailyReferenceETFao56 } from './daily-reference-et-fao56.js'
export { type DailyUse, type DailyUseInput, dailyUse } from './daily-use.js'
export { type PenmanMonteithTerms, referenceETFao56 } from './reference-et-fao56.js'
