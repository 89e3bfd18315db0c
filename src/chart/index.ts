export { chartDay, type DayChart } from './day.js'
export { drawPanels, type Panel, type PanelChart, type PanelRule, type PanelSeries } from './panels.js'
