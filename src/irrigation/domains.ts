import type { Domain } from '../quantity/domain.js'

/** Domains of the quantities that only this topic takes. One row a quantity, by name. */

export const AIR_FILLED_POROSITY: Domain = { quantity: 'air-filled porosity', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give the share of air after drainage, in the container itself' }
export const APPLIED: Domain = { quantity: 'water applied', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give the water of the whole time, zero or more' }
export const CATCH: Domain = { quantity: 'catch', unit: 'any', min: 0, max: Infinity, ends: '[)', hint: 'give the volume or flow of each emitter, zero for one that is blocked; leave a lost cup out' }
export const COEFFICIENT_OF_VARIATION: Domain = { quantity: 'coefficient of variation', unit: '1', min: 0, max: Infinity, ends: '[)', hint: 'give it as a number: 0.05 for 5 %' }
export const DEPTH_USE: Domain = { quantity: 'water use', unit: 'mm', min: 0, max: Infinity, ends: '[)', hint: 'give the depth that the crop takes, zero or more' }
export const DISCHARGE_COEFFICIENT: Domain = { quantity: 'discharge coefficient', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give the flow at one unit of pressure, above zero' }
export const DISCHARGE_EXPONENT: Domain = { quantity: 'discharge exponent', unit: '1', min: -0.5, max: 1.5, ends: '[]', hint: '0 is pressure compensating, 0.5 turbulent, 1 laminar' }
export const DRAIN_CONCENTRATION: Domain = { quantity: 'concentration', unit: 'mg/L', min: 0, max: Infinity, ends: '[)', hint: 'give the laboratory’s number for the drain, zero or more' }
export const DRAIN_EC: Domain = { quantity: 'EC of the drain', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the EC at 25 °C of the collected drain, zero or more; 2396 µS/cm are 2.396 dS/m' }
export const EC_THRESHOLD: Domain = { quantity: 'threshold', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the EC of the saturated extract above which the yield falls' }
export const EFFICIENCY: Domain = { quantity: 'efficiency', unit: '1', min: 0, max: 1, ends: '(]', hint: 'give the share of the water that arrives, above 0 and up to 1' }
export const EMITTER_FLOW: Domain = { quantity: 'flow', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give more' }
export const EMITTER_PRESSURE: Domain = { quantity: 'pressure', unit: 'kPa', min: 0, max: Infinity, ends: '()', hint: 'give the pressure at the emitter above that of the air, above zero' }
export const EXTRACT_EC: Domain = { quantity: 'EC of the saturated extract', unit: 'dS/m', min: 0, max: Infinity, ends: '()', hint: 'give the EC of a saturated paste of soil, not of drain or pore water' }
export const FEED_EC: Domain = { quantity: 'EC of the feed', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the EC at 25 °C of what the emitters give, zero or more; 2396 µS/cm are 2.396 dS/m' }
export const INFILTRATION: Domain = { quantity: 'infiltration rate', unit: 'mm/h', min: 0, max: Infinity, ends: '()', hint: 'give the rate at which the surface takes water, above zero' }
export const LIGHT_COUNTED: Domain = { quantity: 'light', unit: 'J/cm²', min: 0, max: 5000, ends: '[]', hint: 'give light since the last count; no day brings more; 1 MJ/m² is 100 J/cm², 1 J/m² 0.0001' }
/** In one step of a plan, here of an hour: 1,500 W/m², more than the sun gives above the air. In shorter steps less. */
export const LIGHT_IN_STEP: Domain = { quantity: 'light', unit: 'J/cm²', min: 0, max: 540, ends: '[]', hint: 'give J/cm²; 1 MJ/m² is 100' }
export const LIGHT_OF_STEP: Domain = { quantity: 'light in a step', unit: 'any', min: 0, max: Infinity, ends: '[)', hint: 'give light in each step, zero or more' }
/** The strongest sun brings the least in 50 s, less than a shot and its rest take; the most is more than any day. Own judgement, no source. */
export const LIGHT_THRESHOLD: Domain = { quantity: 'light', unit: 'J/cm²', min: 5, max: 5000, ends: '[]', hint: 'give J/cm²; 1 MJ/m² is 100' }
export const LOAD_INERTIA: Domain = { quantity: 'inertia of the load', unit: 'lb·ft²', min: 0, max: Infinity, ends: '()', hint: 'give the inertia of the pump as the motor feels it, above zero' }
export const MEDIA_EXTRACT_EC: Domain = { quantity: 'EC of the extract', unit: 'dS/m', min: 0, max: Infinity, ends: '[)', hint: 'give the EC at 25 °C of the extract, zero or more' }
export const MIN_FLOW: Domain = { quantity: 'lowest flow', unit: 'L/h', min: 0, max: Infinity, ends: '[)', hint: 'give the flow at the lowest pressure of the zone' }
export const NET_WATER: Domain = { quantity: 'net water', unit: 'L or mm', min: 0, max: Infinity, ends: '[)', hint: 'give the water that must reach the roots, zero or more' }
export const ON_TIME: Domain = { quantity: 'longest opening', unit: 's', min: 0, max: Infinity, ends: '()', hint: 'give a time above zero' }
export const PLAN_STEP: Domain = { quantity: 'time', unit: 's', min: 30, max: 3600, ends: '[]', hint: 'take a minute or ten' }
export const PONDING: Domain = { quantity: 'ponding depth', unit: 'mm', min: 0, max: Infinity, ends: '()', hint: 'give the depth of water that may stand, above zero' }
export const PUMP_FLOW: Domain = { quantity: 'flow of the pump', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give the flow that the pump holds at working pressure' }
export const REST: Domain = { quantity: 'rest between openings', unit: 's', min: 0, max: Infinity, ends: '[)', hint: 'give a time of zero or more' }
export const ROOT_TEMPERATURE: Domain = { quantity: 'root temperature', unit: '°C', min: -5, max: 60, ends: '[]', hint: 'give the temperature of the medium, not of the air' }
export const RUN_TIME: Domain = { quantity: 'run time', unit: 's', min: 0, max: Infinity, ends: '[)', hint: 'give the time that the valve is open in all, zero or more' }
export const SHARE: Domain = { quantity: 'share', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give a share from 0 to 1' }
export const SHARE_WITHOUT_LIGHT: Domain = { quantity: 'share without light', unit: '1', min: 0, max: 1, ends: '[]', hint: 'give the share of the day’s water that is used whatever the light, from 0 to 1' }
export const SHOT: Domain = { quantity: 'shot', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give more' }
export const SHOT_OF_ZONE: Domain = { quantity: 'volume of the shot', unit: 'L', min: 0, max: Infinity, ends: '[)', hint: 'give the volume for all emitters together, zero or more' }
export const SOME_APPLIED: Domain = { quantity: 'water applied', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give the water of the whole time, above zero' }
export const SOME_DRAINED: Domain = { quantity: 'drain', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'without drain salts only pile up: step through the days with followReservoir()' }
export const SOME_LEACHING: Domain = { quantity: 'drain fraction', unit: '1', min: 0, max: 1, ends: '(]', hint: 'give the drain over the water applied, above zero: without drain there is no steady state' }
export const SOME_RUN_TIME: Domain = { quantity: 'run time', unit: 's', min: 0, max: Infinity, ends: '()', hint: 'give a time above zero' }
export const STARTS_PER_HOUR: Domain = { quantity: 'starts per hour', unit: '1/h', min: 0, max: Infinity, ends: '()', hint: 'take it from the plate or the maker of the motor' }
export const STARTS_TIMES_INERTIA: Domain = { quantity: 'starts per hour times inertia', unit: 'lb·ft²/h', min: 0, max: Infinity, ends: '()', hint: 'take it from the maker of the motor' }
export const STATISTICAL_UNIFORMITY: Domain = { quantity: 'statistical uniformity', unit: '1', min: -Infinity, max: 1, ends: '(]', hint: 'give it as a share, 1 at best' }
export const STORE_EC: Domain = { quantity: 'EC of the root zone', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the EC at 25 °C of the water in the root zone, zero or more; 2396 µS/cm are 2.396 dS/m' }
export const STORE_WATER: Domain = { quantity: 'water in the root zone', unit: 'L', min: 0, max: Infinity, ends: '()', hint: 'give water content times volume of medium, above zero' }
export const TIME_CONSTANT: Domain = { quantity: 'time constant', unit: 's', min: 0, max: Infinity, ends: '()', hint: 'give the water in the root zone over the drain a second, above zero' }
export const UPTAKE_EC: Domain = { quantity: 'EC of the uptake', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the salts that plants take over the water that they take, as an EC; zero when they take none; 2396 µS/cm are 2.396 dS/m' }
export const UPTAKE_PER_LIGHT: Domain = { quantity: 'uptake per light', unit: 'mL/m² per J/cm²', min: 0, max: 10, ends: '[]', hint: 'common factors are 1.5 to 2.5; more than 4.08 cannot evaporate by light alone' }
export const USE_RATE: Domain = { quantity: 'water use', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give the water that the plants of the container take in an hour, above zero' }
export const WATER_CONTENT_CHANGE: Domain = { quantity: 'change', unit: 'm³/m³', min: 0, max: 1, ends: '[]', hint: 'give 0 or more' }
export const WATER_EC: Domain = { quantity: 'EC of the irrigation water', unit: 'dS/m', min: 0, max: 200, ends: '[]', hint: 'give the EC at 25 °C, zero or more; 2396 µS/cm are 2.396 dS/m' }
export const WATER_TEMPERATURE: Domain = { quantity: 'temperature of water', unit: '°C', min: 0, max: 100, ends: '[]', hint: 'give the temperature of liquid water' }
export const WETTED_AREA: Domain = { quantity: 'area', unit: 'm²', min: 0, max: Infinity, ends: '()', hint: 'give the area on which the water falls, above zero' }
export const YIELD_SLOPE: Domain = { quantity: 'slope', unit: '%/(dS/m)', min: 0, max: 100, ends: '(]', hint: 'give the loss of yield for each dS/m above the threshold, above zero' }
export const ZONES: Domain = { quantity: 'zones', unit: '1', min: 1, max: 100000, ends: '[]', hint: 'give the whole number of zones that run in turn' }
export const ZONE_FLOW: Domain = { quantity: 'flow of the zone', unit: 'L/h', min: 0, max: Infinity, ends: '()', hint: 'give the flow of all emitters on the valve, above zero' }
