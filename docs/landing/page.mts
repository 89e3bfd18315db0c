import { startShotForm } from './shot-form.mjs'
import { startWeek } from './week.mjs'

startShotForm()
startWeek()
