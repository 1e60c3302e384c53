import { describe, expect, it } from 'vitest'
import { NodeCourse, caseAfter, setNodeCourse, windingAfter } from '../../shared-engine/heat/node-times.ts'
import { MotorNodes, NodeMotion, setNodeMotion } from '../../shared-engine/heat/two-nodes.ts'
import { chemistryIds } from '../../shared-engine/reference/chemistry.ts'
import { cellHeatOf } from '../../shared-engine/reference/heat.ts'

// *Source:* the thermal block of a maker's sheet of a 40 mm, 150 W motor, maker not named: winding to housing 1.93 K/W,
// housing to air 4.65 K/W, time constants 41.6 s of the winding and 1,120 s of the motor. From memory.
const sheet = { windingToCase: 1.93, caseToAir: 4.65, windingSeconds: 41.6, motorSeconds: 1120 }

/** The two nodes as a builder enters them: each capacity is its time constant over the way out of the node. */
function nodesOfSheet(): MotorNodes {
  const nodes = new MotorNodes()
  nodes.windingCapacity = sheet.windingSeconds / sheet.windingToCase
  nodes.caseCapacity = sheet.motorSeconds / sheet.caseToAir
  nodes.windingToCase = 1 / sheet.windingToCase
  nodes.toSink = 1 / sheet.caseToAir
  return nodes
}

function courseOf(nodes: MotorNodes, watts: number, winding = 0, inCase = 0): NodeCourse {
  const motion = new NodeMotion()
  // iron goes into the case alone and copper grows with its own heat: a tiny copper loss keeps the equation linear
  setNodeMotion(motion, nodes, watts, 0)
  const course = new NodeCourse()
  setNodeCourse(course, motion, winding, inCase, 20)
  return course
}

describe('a motor as its sheet tells it', () => {
  const little = 1e-6

  it('has a winding that makes 63.2 % of its way to a case that stays in 41.6 s', () => {
    const nodes = nodesOfSheet()
    nodes.caseCapacity = 1e9
    const [once, whole] = [sheet.windingSeconds, 1e5].map((seconds) =>
      windingAfter(courseOf(nodes, little), seconds),
    )
    expect(Math.abs((once ?? NaN) / (whole ?? NaN) - (1 - Math.exp(-1)))).toBeLessThan(1e-4) // the case, made heavy, warms a little all the same
  })

  it('cools whole in 1,120 s to 36.8 %, 12 % later for the winding, which the sheet leaves out of that number', () => {
    const nodes = nodesOfSheet()
    // both nodes warm, as after an hour of work
    const after = (seconds: number) => caseAfter(courseOf(nodes, little, 50, 50), seconds) / 50
    const [low, high] = [sheet.motorSeconds, 1.12 * sheet.motorSeconds]
    expect(after(low)).toBeGreaterThan(Math.exp(-1))
    expect(after(high)).toBeLessThan(Math.exp(-1))
  })

  it('has the copper that a motor of 480 g may have: 40 to 80 g', () => {
    // 385 J/(kg·K), copper at room temperature: CRC Handbook
    const grams = (nodesOfSheet().windingCapacity / 385) * 1000
    expect(grams).toBeGreaterThan(40)
    expect(grams).toBeLessThan(80)
  })
})

describe('the heat that cells take up', () => {
  // *Source:* calorimetry of a round cobalt cell of 40 g: 0.96 J/(g·K) discharged, 1.04 charged (Maleki and others, J.
  // Electrochem. Soc. 146, 1999); of a round iron phosphate cell of 70 g: 1.1 J/(g·K) (Forgez and others, J. Power
  // Sources 195, 2010). From memory; the table's values are others, by cathode.
  it.each([
    ['liion', 960, 0.15], // the table's is of nickel cathodes, which are lower
    ['lipo', 1040, 0.1],
    ['lihv', 1040, 0.1],
    ['lifepo4', 1100, 0.1],
  ] as const)('%s: %d J/(kg·K)', (id, measured, tolerance) => {
    expect(Math.abs(cellHeatOf(id).specificHeat / measured - 1)).toBeLessThan(tolerance)
  })

  it('covers every chemistry of the table', () => {
    expect([...chemistryIds].toSorted()).toEqual(['lifepo4', 'lihv', 'liion', 'lipo'])
  })
})
