import type { SettingsDoubt, WateringSettingsFinding } from './settings-finding.js'

export type Found = WateringSettingsFinding | null

export function above(code: SettingsDoubt, about: string, value: number, limit: number, unit: string): Found {
  return value > limit * (1 + 1e-9) ? { code, level: 'caution', about, value, limit, unit } : null
}

export function below(code: SettingsDoubt, about: string, value: number, limit: number, unit: string): Found {
  return value < limit * (1 - 1e-9) ? { code, level: 'caution', about, value, limit, unit } : null
}
