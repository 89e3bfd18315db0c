import { type CheckWateringInput, litres, litresPerHour, minutes, waterContent } from 'porewater'

/** Facts under which nothing speaks against watering. Invented. */
export const safeWatering: CheckWateringInput = {
  request: { volume: litres(0.4), runTime: minutes(6) },
  limits: {
    maxPerShot: litres(0.5),
    maxPerDay: litres(5),
    maxRunTime: minutes(10),
    minRest: minutes(15),
    maxReadingAge: minutes(20),
    flow: litresPerHour(4),
    minBelievable: waterContent(0.2),
    maxBelievable: waterContent(0.8),
    fullPoint: waterContent(0.62),
  },
  facts: {
    givenInDay: litres(2),
    sinceLastShot: minutes(40),
    waterContent: waterContent(0.55),
    age: minutes(3),
    flag: 1,
    clockRanOn: true,
    flowWhileClosed: false,
    locked: false,
    alarms: [],
  },
}
