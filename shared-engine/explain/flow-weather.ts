import { check } from '../check.ts'
import type { Build } from '../entries/schema.ts'
import { toEngine } from '../units/convert.ts'
import type { QuantityKind } from '../units/kinds.ts'

/** Least pump flow over the weather. */
export interface FlowForWeather {
  /** Air, °C, rising. */
  readonly air: readonly number[]
  /** m³/s as the pump gives it where it was measured; null where no flow keeps it cool, or the coolant freezes. */
  readonly flow: readonly (number | null)[]
  /** m³/s of the build. */
  readonly today: number
  /** °C at which the coolant freezes. */
  readonly freezes: number
  /** °C of the build's air. */
  readonly airToday: number
}

/** What a circuit has to keep within bounds. */
const kept: ReadonlySet<string> = new Set([
  'motor.temperature',
  'controller.temperature',
  'cooling.warming',
  'cooling.boiling',
])

/** Air that is looked at, °C, and the step. */
const coldest = -30
const hottest = 40
const step = 5
/** Flows that are looked at, L/min: what small pumps move. */
const leastFlow = 0.01
const mostFlow = 20
/** Halvings between them, in their logarithms: to a few hundredths. */
const halvings = 14

/**
 * The least flow at which the drive pattern leaves motor, controller and coolant within their limits, over the
 * temperature of the air, all else as built.
 *
 * @returns null without a liquid circuit
 * *Source:* the circuit of `docs/model.md` §7 for every air temperature.
 */
export function flowForWeather(build: Build): FlowForWeather | null {
  const { machine } = check(build)
  const { cooling } = build
  if (cooling === undefined || machine.cooling === null) return null
  const air = Array.from({ length: (hottest - coldest) / step + 1 }, (_, at) => coldest + step * at)
  const freezes = machine.cooling.freezes
  const keeps = (airTemperatureC: number, flowLPerMin: number): boolean => {
    const ground = { ...build.ground, airTemperatureC }
    const tried = check({ ...build, ground, cooling: { ...cooling, flowLPerMin } })
    return tried.limits.every(({ id, margin }) => !kept.has(id) || (margin !== null && margin >= 0))
  }
  return {
    air,
    flow: air.map((celsius) => (celsius <= freezes ? null : leastFlowAt((flow) => keeps(celsius, flow)))),
    today: toEngine(cooling.flowLPerMin, 'flow'),
    freezes,
    airToday: build.ground.airTemperatureC,
  }
}

/** Air of a winter's and a summer's day, °C, among those looked at. *Source:* common practice, no source. */
const seasons = [-10, 30] as const
/** Nearer to a season than this the build's own air stands for it, K. */
const sameDay = 5

/**
 * What that says of the build's own air, of January and of July, in a few sentences.
 *
 * @param said puts a number into words
 */
export function flowWords(
  weather: FlowForWeather,
  said: (value: number, kind: QuantityKind) => string,
): string {
  const { freezes, airToday } = weather
  const others = seasons.filter((celsius) => Math.abs(celsius - airToday) > sameDay && celsius > freezes)
  const [first, ...rest] = others.map((celsius) => {
    const enough = enoughAt(weather, celsius)
    const at = said(celsius, 'temperature')
    return enough === null ? `at ${at} none of a small pump is` : `at ${at} ${said(enough, 'flow')}`
  })
  const seasonal = first === undefined ? '' : ` ${[first, ...rest].join(', ')}.`.replace(' at', ' At')
  return `${todayWords(weather, said)}${seasonal} Below ${said(freezes, 'temperature')} this coolant freezes.`
}

function todayWords(weather: FlowForWeather, said: (value: number, kind: QuantityKind) => string): string {
  const { freezes, airToday } = weather
  const at = `At ${said(airToday, 'temperature')}`
  if (airToday <= freezes) return `${at} this coolant freezes.`
  const enough = enoughAt(weather, airToday)
  return enough === null
    ? `${at} no flow of a small pump keeps everything within its limits in this drive.`
    : `${at} ${said(enough, 'flow')} is enough for this drive.`
}

/** m³/s for air at least as warm; null where none is enough. */
function enoughAt({ air, flow }: FlowForWeather, celsius: number): number | null {
  return flow[air.findIndex((one) => one >= celsius)] ?? null
}

function leastFlowAt(keeps: (litresPerMinute: number) => boolean): number | null {
  if (!keeps(mostFlow)) return null
  if (keeps(leastFlow)) return toEngine(leastFlow, 'flow')
  let [low, high] = [leastFlow, mostFlow]
  for (let done = 0; done < halvings; done += 1) {
    const middle = Math.sqrt(low * high)
    if (keeps(middle)) high = middle
    else low = middle
  }
  return toEngine(high, 'flow')
}
