import {
  boxContainer,
  type ContainerFlow,
  centimetres,
  centimetresOfSuction,
  centimetresPerMinute,
  containerCapacity,
  containerFlowRichards1931,
  type FlowStep,
  fraction,
  hours,
  layeredFlowRichards1931,
  litres,
  minutes,
  perCentimetre,
  type Reducer,
  type RichardsState,
  type RichardsStep,
  runReducer,
  type StoreState,
  vanGenuchten1980,
  waterContent,
  waterStore,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const container = boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) })
const medium = vanGenuchten1980({
  residual: waterContent(0.15),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.12),
  n: 1.7,
})
const layer = { container, medium, saturatedConductivity: centimetresPerMinute(1) }
const store = waterStore({
  substrateVolume: litres(15),
  containerCapacity: waterContent(0.6),
  minWaterContent: waterContent(0.1),
  bypass: fraction(0.1),
  drainLag: minutes(10),
})
const shot = { duration: minutes(10), applied: litres(0.7), demand: litres(0) }
const pause = { duration: hours(1), applied: litres(0), demand: litres(0) }

describe('a model of flow in a container', () => {
  it('is a reducer, to the compiler as well', () => {
    const reducers: [Reducer<StoreState, FlowStep, unknown>, Reducer<RichardsState, RichardsStep, unknown>] = [
      store,
      containerFlowRichards1931(layer),
    ]
    expect(reducers.map(({ step }) => step.length)).toEqual([2, 2])
  })
  it.each<[string, () => ContainerFlow<unknown>]>([
    ['waterStore', () => store as ContainerFlow<unknown>],
    ['containerFlowRichards1931', () => containerFlowRichards1931(layer) as ContainerFlow<unknown>],
    ['layeredFlowRichards1931', () => layeredFlowRichards1931({ layers: [layer] }) as ContainerFlow<unknown>],
  ])('%s runs a day in one go as in two, by way of JSON', (_, made) => {
    const inputs = [shot, pause, shot, pause]
    const flow = made()
    const whole = runReducer({ reducer: flow, inputs })
    const early = runReducer({ reducer: flow, inputs: inputs.slice(0, 2) })
    const late = runReducer({
      reducer: made(),
      state: JSON.parse(JSON.stringify(early.state)),
      inputs: inputs.slice(2),
    })
    expect({ ...late, outputs: [...early.outputs, ...late.outputs] }).toEqual(whole)
    expect(whole.outputs.some(({ drained }) => drained > 0)).toBe(true)
  })
  it('starts at container capacity: all that the store holds, and the medium at rest over a bottom without suction', () => {
    expect(store.waterContent(store.start)).toBe(0.6)
    const flow = containerFlowRichards1931({ ...layer, nodes: 301 })
    // The same content by quadrature of the retention curve over the height.
    expect(Math.abs(flow.waterContent(flow.start) - containerCapacity({ container, medium }))).toBeLessThan(1e-4)
    const later = runReducer({ reducer: flow, inputs: [pause] })
    expect(later.outputs[0]?.drained).toBeLessThan(1e-6)
  })
  it('refuses a water content and a state of the store that are no numbers', () => {
    expectDomainError(() => store.startFrom(1.2 as never), { argument: 'waterContent', max: 1 })
    for (const lost of [null, undefined, 5]) expectInputError(() => store.step(lost as never, shot), 'state')
    for (const lost of [null, undefined, {}])
      expectInputError(() => containerFlowRichards1931(layer).step(lost as never, shot), 'state')
    for (const torn of [Number.NaN, '3', null])
      expectDomainError(() => store.step({ ...store.start, held: torn as never }, shot), { argument: 'held' })
  })
  it('starts at rest over the suction that a mat keeps', () => {
    const base = centimetresOfSuction(12)
    const flow = containerFlowRichards1931({ ...layer, base })
    expect(flow.start).toEqual(flow.startAt((height) => centimetresOfSuction(12 + (height as number))))
  })
})
