import { type CropET, centimetresOfSuction, type FeddesLimits, millimetresPerDay } from 'porewater'

/** Suctions between which plants of the simulated days take up water: invented, of the size of those of tables. */
export const limits: FeddesLimits = {
  h1: centimetresOfSuction(0),
  h2: centimetresOfSuction(1),
  h3HighDemand: centimetresOfSuction(300),
  h3LowDemand: centimetresOfSuction(800),
  h4: centimetresOfSuction(8000),
  highDemand: millimetresPerDay<CropET>(5),
  lowDemand: millimetresPerDay<CropET>(1),
}
