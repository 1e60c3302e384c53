import { describe, expect, it } from 'vitest'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { ampsAt, DriveLine, setDriveLine, torqueAt } from '../../shared-engine/motor/drive-line.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAt } from '../../shared-engine/vehicle/drive-state.ts'
import { machineOfStored } from '../fixtures/build/machine.ts'
import { simpleBuild } from '../fixtures/build/plain.ts'

// *Source:* Modelica Standard Library, Electrical.Machines.Examples.DCMachines, table of `DCPM_withLosses` and parameters
// of `DCPM_Start`, read there; after Haumer, Kral, Kapeller, Bäuml and Gragger, *The AdvancedMachines Library: Loss Models
// for Electric Machines*, 7th Modelica Conference, 2009. A permanent-magnet motor on 100 V that draws 100 A, with
// copper loss alone. Its companion with all losses is a pin (`test/pins/dc-motor-losses.test.ts`): they are set from the
// point that it would check.

const perTurn = (2 * Math.PI) / 60

interface Printed {
  readonly kv: number
  readonly milliohm: number
  readonly noLoadAmps: number
  readonly controllerMilliohm: number
  readonly temperature: number
  readonly rpm: number
  readonly innerVolts: number
  readonly copper: number
  readonly iron: number
  readonly controller: number
  readonly output: number
  readonly torque: number
}

/** 95 V at 1425 rpm: 15 rpm/V. */
const lossless: Printed = {
  kv: 15,
  milliohm: 50,
  noLoadAmps: 0,
  controllerMilliohm: 0,
  temperature: 20,
  rpm: 1425,
  innerVolts: 95,
  copper: 500,
  iron: 0,
  controller: 0,
  output: 9500,
  torque: 63.66,
}

/** That motor on 100 V that do not sag, no reductions. */
function machineOf({ kv, milliohm, noLoadAmps, controllerMilliohm, temperature }: Printed): Machine {
  const plain = simpleBuild()
  const machine = machineOfStored({
    ...plain,
    controller: { resistanceMilliohm: controllerMilliohm },
    motor: {
      kvRpmPerVolt: kv,
      resistanceMilliohm: milliohm,
      noLoadAmps,
      noLoadVolts: 100,
      viscousPercent: 0,
      poleCount: 2,
      ratedMaxRpm: 3000,
      magnet: 'ignore',
    },
    service: { windingTemperatureC: temperature },
  })
  return { ...machine, pack: { ...machine.pack, openVolts: 100, resistance: 0 } }
}

describe('a permanent-magnet motor with copper loss alone', () => {
  const printed = lossless
  const machine = machineOf(printed)
  const line = new DriveLine()
  setDriveLine(line, machine, 100, printed.temperature, 1)
  const speed = printed.rpm * perTurn
  // 1e-3: the table's copper has 0.00392 /K where IEC 60028 has 0.00393: 0.06 % of 50 mΩ at 75 K, which the small
  // difference of 100 V and the inner voltage passes on to the current; torque is printed to four figures
  const near = (found: number, value: number) => expect(Math.abs(found - value)).toBeLessThan(1e-3 * value)

  it('draws 100 A at its nominal speed', () => {
    near(ampsAt(line, speed), 100)
    near(speed * line.torqueConstant, printed.innerVolts)
  })

  it('pushes with the torque printed', () => {
    near(torqueAt(line, speed), printed.torque)
  })

  it('turns 10 kW into what the table says, loss by loss', () => {
    const setting = curveSettingOf(machine)
    const state = driveStateAt(setting, speed / setting.line.motorPerBelt)
    near(state.packPower, 10_000)
    near(state.copperLoss, printed.copper)
    near(state.shaftPower, printed.output)
    expect(state.packLoss).toBe(0)
    // 0.2 %: as above, and nothing where the table has nothing
    expect(Math.abs(state.ironLoss - printed.iron)).toBeLessThanOrEqual(2e-3 * printed.iron)
    expect(Math.abs(state.controllerLoss - printed.controller)).toBeLessThanOrEqual(2e-3 * printed.controller)
  })
})

it('on 100 V it runs at 1500 rpm where nothing holds it, as the library’s no-load start has it', () => {
  const line = new DriveLine()
  setDriveLine(line, machineOf(lossless), 100, 20, 1)
  // 1e-12: closed form
  expect(Math.abs(100 / line.torqueConstant / (1500 * perTurn) - 1)).toBeLessThan(1e-12)
  expect(torqueAt(line, 1500 * perTurn)).toBeCloseTo(0, 9)
})
