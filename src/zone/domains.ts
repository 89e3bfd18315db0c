import type { Domain } from '../quantity/domain.js'

export const DAYS_BEFORE: Domain = {
  quantity: 'days that are looked at before the day',
  unit: '1',
  min: 0,
  max: 60,
  ends: '[]',
  hint: 'give a whole number; a week shows what is usual',
}
