import { packWires } from './pack-wires.ts'
import type { GroupNode } from '../rows/group.ts'
import { packHeat } from './pack-heat.ts'

const perCell = {
  question: 'Is this the rating of the whole pack or of one cell?',
  conventions: [
    { label: 'Whole pack', factor: 1 },
    { label: 'One cell; cells side by side add up', factor: 'parallel' },
  ],
} as const

export const pack = {
  label: 'Pack',
  sections: ['', 'Resistance', 'Heat and charging'],
  entries: {
    chemistry: {
      label: 'Cell chemistry',
      kind: 'text',
      choices: [
        { value: 'lipo', label: 'Lithium polymer, 4.20 V' },
        { value: 'lihv', label: 'Lithium polymer, high voltage, 4.35 V' },
        { value: 'liion', label: 'Lithium ion, round cells, 4.20 V' },
        { value: 'lifepo4', label: 'Lithium iron phosphate, 3.60 V' },
      ],
      help: 'Sets the voltage of a cell from full to empty and how low it may sag. It is printed on the pack.',
    },
    series: {
      label: 'Cells in series',
      kind: 'count',
      counted: 'cells',
      low: 1,
      high: 60,
      usual: [1, 28],
      whole: true,
      lever: { step: 1, least: 2, times: 2 },
      axis: { offered: 2, turns: 1 },
      help: 'The number before the S on the label. More in series is more voltage.',
    },
    parallel: {
      label: 'Cells in parallel',
      kind: 'count',
      counted: 'cells',
      low: 1,
      high: 40,
      whole: true,
      default: 1,
      help: 'The number before the P on the label; 1 where there is none. More side by side is less sag.',
    },
    capacityMah: {
      label: 'Capacity',
      kind: 'charge',
      low: 50,
      high: 200_000,
      usual: [300, 100_000],
      lever: { step: 100, way: 'more', times: 4 },
      help: 'Charge of the whole pack, as labelled.',
      asks: perCell,
    },
    cellResistanceMilliohm: {
      label: 'Resistance of one cell',
      section: 'Resistance',
      kind: 'ohms',
      low: 0.05,
      high: 200,
      usual: [0.1, 60],
      help: 'Of one cell at 25 °C, from the sag between two loads held for 30 to 60 s. Shorter loads and chargers show too little.',
      asks: {
        question: 'How was this resistance taken?',
        conventions: [
          { label: 'Sag of one cell between two loads, each held for 30 to 60 s', factor: 1 },
          {
            label: 'Sag of one cell between two loads, seconds apart',
            factor: 1,
            note: 'So short a load misses part of the sag: volts after minutes come out some 4 % too high.',
          },
          {
            label: 'Shown by a charger or meter that uses alternating current',
            factor: null,
            note: 'A meter with alternating current misses part of the sag, often a third or more. Measure two loads.',
          },
        ],
      },
    },
    wiringResistanceMilliohm: {
      label: 'Resistance of the wiring',
      section: 'Resistance',
      kind: 'ohms',
      low: 0,
      high: 100,
      defaultFrom: packWires,
      lever: { step: 0.1, way: 'less', times: 4 },
      help: 'Leads, plugs and busbars between cells and controllers, there and back. Measure the drop at a known current; left empty, that of the wires of the pack.',
      asks: {
        question: 'Is this there and back, or one lead?',
        conventions: [
          { label: 'There and back', factor: 1 },
          { label: 'One of two equal leads', factor: 2 },
        ],
      },
    },
    continuousC: {
      label: 'Continuous rating',
      kind: 'cRate',
      low: 0.2,
      high: 300,
      optional: true,
      lever: { step: 1, way: 'more' },
      help: 'The C number on the label: amps per amp-hour that the pack may give for long. Labels tend to flatter.',
      brings: 'The limit on the pack’s continuous current.',
    },
    burstC: {
      label: 'Burst rating',
      kind: 'cRate',
      low: 0.2,
      high: 300,
      optional: true,
      lever: { step: 1, way: 'more' },
      help: 'The C number for a few seconds.',
      brings: 'The limit on the pack’s greatest current.',
    },
    ...packHeat,
  },
} as const satisfies GroupNode
