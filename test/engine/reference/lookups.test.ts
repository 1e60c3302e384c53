import { evaluate } from 'mathjs'
import { describe, expect, it } from 'vitest'
import { beltMeshFactor, beltProfileIds, beltProfileOf } from '../../../shared-engine/reference/belts.ts'
import { chainSizeIds, chainSizeOf, strandFactor } from '../../../shared-engine/reference/chains.ts'
import {
  cellResistanceFactor,
  chemistryIds,
  chemistryOf,
  floorVolts,
  openCircuitVolts,
} from '../../../shared-engine/reference/chemistry.ts'
import { coolantOf } from '../../../shared-engine/reference/coolants.ts'
import gearTable from '../../../shared-engine/reference/gears.json' with { type: 'json' }
import { dynamicFactor, finishIds, lewisFormFactor } from '../../../shared-engine/reference/gears.ts'
import { groundCoefficients, terrains } from '../../../shared-engine/reference/ground.ts'
import {
  cellHeatOf,
  coldCapacityShare,
  defaultPattern,
  fuseSeconds,
  heatOrigins,
} from '../../../shared-engine/reference/heat.ts'
import { magnetCoefficient } from '../../../shared-engine/reference/magnets.ts'
import { type MaterialId, materialIds, materialOf } from '../../../shared-engine/reference/materials.ts'

describe('resting voltage', () => {
  it.each(chemistryIds)(
    '%s meets every point of its curve, is linear between them and held past its ends',
    (id) => {
      const { charge, volts } = chemistryOf(id)
      charge.forEach((point, index) => {
        // 14 digits: the point itself, but for the rounding of percent to a fraction.
        expect(openCircuitVolts(id, point)).toBeCloseTo(volts[index] ?? NaN, 14)
        const [nextPoint, nextVolts] = [charge[index + 1], volts[index + 1]]
        if (nextPoint === undefined || nextVolts === undefined) return
        expect(openCircuitVolts(id, (point + nextPoint) / 2)).toBeCloseTo(
          ((volts[index] ?? NaN) + nextVolts) / 2,
          13,
        )
      })
      expect(openCircuitVolts(id, -1)).toBe(volts[0])
      expect(openCircuitVolts(id, 2)).toBe(volts.at(-1))
      expect(openCircuitVolts(id, 1)).toBe(volts.at(-1))
      expect(floorVolts(id)).toBeLessThan(openCircuitVolts(id, 0.5))
    },
  )
})

describe('cell resistance and temperature', () => {
  it('doubles every 20 K colder and is held outside −20 to 45 °C', () => {
    expect(cellResistanceFactor(25)).toBe(1)
    expect(cellResistanceFactor(5)).toBe(2)
    expect(cellResistanceFactor(-40)).toBe(cellResistanceFactor(-20))
    expect(cellResistanceFactor(70)).toBe(0.5)
  })
})

describe('Lewis form factor', () => {
  it('meets every row', () => {
    gearTable.lewis.teeth.forEach((teeth, row) => {
      expect(lewisFormFactor(teeth)).toBeCloseTo(gearTable.lewis.Y[row] ?? NaN, 15)
    })
  })

  it('is linear between rows, continues the line of 10 and 11 below them, stays at 400 above', () => {
    expect(lewisFormFactor(23)).toBeCloseTo((0.331 + 0.337) / 2, 15)
    expect(lewisFormFactor(4)).toBeCloseTo(0.201 - 6 * 0.025, 15)
    expect(lewisFormFactor(1000)).toBe(0.48)
  })
})

describe('dynamic factor', () => {
  it.each(finishIds)('%s follows the formula that the table prints', (finish) => {
    for (const speed of [0, 0.3, 6.1, 25]) {
      // 1e-12: the same closed form, read from the table's text by a general-purpose evaluator.
      expect(dynamicFactor(finish, speed)).toBeCloseTo(
        evaluate(gearTable.dynamicFactor[finish], { V: speed }),
        12,
      )
    }
  })
})

describe('belts and chains', () => {
  it('are in SI', () => {
    expect(beltProfileOf('XL')).toEqual({
      pitch: 5.08e-3,
      referenceWidth: 9.5e-3,
      allowableTension: 50.17,
      massPerMetre: 0.022,
    })
    expect(beltProfileOf('H5M').allowableTension).toBeNull()
    expect(chainSizeOf('08B').minTensile).toBe(17800)
    expect(chainSizeOf('08B').pitchInches).toBe(0.5)
    expect(beltProfileIds).toHaveLength(11)
    expect(chainSizeIds[0]).toBe('04C')
    expect(chainSizeIds).toHaveLength(11)
  })

  it('lose strength with few teeth in mesh and gain it with strands', () => {
    expect([8, 6, 5, 2].map(beltMeshFactor)).toEqual([1, 1, 0.8, 0.19999999999999996])
    expect([1, 2, 3, 4].map(strandFactor)).toEqual([1, 1.7, 2.5, 3.3])
    expect(() => strandFactor(5)).toThrow('5 strands')
  })
})

describe('the rest', () => {
  it('materials are in Pa, metals stronger than rubbers', () => {
    expect(materialIds).toHaveLength(21)
    expect(materialOf('steel-c45').yield).toBe(340e6)
    for (const id of materialIds) {
      const material = materialOf(id)
      // 2.5 %: the table rounds to whole MPa. Printed rule of the table: polymers and rubbers shear at 0.6, bear 1.2 of tensile.
      if (material.family === 'metal') continue
      expect(Math.abs(material.shear / (0.6 * material.tensile) - 1)).toBeLessThan(0.025)
      expect(Math.abs(material.bearing / (1.2 * material.tensile) - 1)).toBeLessThan(0.025)
    }
    expect(() => materialOf('constructor' as MaterialId)).toThrow('constructor')
  })

  it('magnets, coolants and grounds answer', () => {
    expect(magnetCoefficient('ndfeb')).toBe(-0.0011)
    expect(magnetCoefficient('ignore')).toBe(0)
    expect(coolantOf('glycol50')).toMatchObject({ density: 1071, specificHeat: 3300 })
    expect(terrains.get('dry-sand')?.soil).toMatchObject({ n: 1.1, kphi: 1528.43 })
    expect(groundCoefficients.get('ice')?.gripCoefficient).toBe(0.12)
  })
})

describe('heat of electrics', () => {
  it('cold takes charge away, straight between the rows', () => {
    expect(coldCapacityShare(-30)).toBe(0.6)
    expect(coldCapacityShare(5)).toBeCloseTo(0.89, 12)
    expect(coldCapacityShare(40)).toBe(1)
  })
  it('a fuse opens sooner at more current, straight in the logarithms', () => {
    expect(fuseSeconds(2)).toBeCloseTo(0.15, 12)
    expect(fuseSeconds(Math.sqrt(2 * 3.5))).toBeCloseTo(Math.sqrt(0.15 * 0.04), 12)
    expect(fuseSeconds(0)).toBeCloseTo(360_000, 6)
    expect(fuseSeconds(10)).toBeCloseTo(0.02, 12)
  })
  it('a full cell stays below its ceiling', () => {
    for (const id of chemistryIds)
      expect(cellHeatOf(id).ceilingVolts).toBeGreaterThanOrEqual(openCircuitVolts(id, 1))
  })
  it('the default pattern takes five minutes and says that it is assumed', () => {
    expect(defaultPattern.rows.reduce((sum, row) => sum + row.seconds, 0)).toBe(300)
    expect(heatOrigins.defaultPattern.source).toContain('assumption')
  })
})
