import type { LimitFacts } from './limit.ts'

type Facts = Omit<LimitFacts, 'label' | 'question' | 'needs' | 'lacking'>

/** What limits of a shaft, the joint on it and the bearing beside it compare, wherever the shaft is. */
export const shaftFacts = {
  shaft: { group: 'holds', sense: 'maximum', unit: 'Pa', kind: 'stress' },
  joint: { group: 'holds', sense: 'maximum', unit: 'N m', kind: 'torque' },
  shaftLasts: { group: 'lasts', sense: 'maximum', unit: '1', kind: 'none' },
  jointLasts: { group: 'lasts', sense: 'maximum', unit: 'N m', kind: 'torque' },
  bearingLife: { group: 'lasts', sense: 'minimum', unit: 'h', kind: 'hours' },
  bearingSpeed: { group: 'lasts', sense: 'maximum', unit: 'mm/min', kind: 'bearingSpeed' },
  stopShaft: { group: 'mishap', sense: 'maximum', unit: 'Pa', kind: 'stress' },
  stopJoint: { group: 'mishap', sense: 'maximum', unit: 'N m', kind: 'torque' },
} as const satisfies Readonly<Record<string, Facts>>
