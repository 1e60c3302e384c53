import type { LimitId } from '../limits/id.ts'
import { breaksOf, otherMishap } from './mishaps.ts'

/**
 * What a builder sees where a limit of ordinary use or of long use is passed, each a sentence; reductions, wires, supplies
 * and accessories by their number.
 *
 * *Source:* what each limit is held against, `docs/model.md` §8.
 */
const sentences: Readonly<Record<string, string>> = {
  'motor.free-rpm':
    'With the track off the ground the motor turns faster than it may: magnets or bearings come loose.',
  'motor.loaded-rpm': 'At top speed the motor turns faster than it may.',
  'motor.joint': 'The pinion turns on the motor’s shaft.',
  'motor.current-burst': 'The motor draws more for seconds than it is rated for.',
  'motor.burst-heat': 'The winding is too hot before a burst is over.',
  'motor.joint-lasts': 'The pinion works loose on the motor’s shaft in time.',
  'motor.current-continuous': 'This drive takes more from the motor, hour after hour, than it is rated for.',
  'motor.temperature': 'This drive cooks the motor: insulation and magnets suffer.',
  'controller.electrical-rpm': 'The controller loses step: the motor stutters or cuts out.',
  'controller.current-burst': 'The controller passes more for seconds than it is rated for.',
  'controller.over-volts': 'Braking on a full pack puts more volts on the controller than it bears.',
  'controller.current-continuous':
    'This drive takes more through the controller, hour after hour, than it is rated for.',
  'controller.temperature': 'This drive overheats the controller: it cuts back, or fails.',
  'controller.ripple-current': 'The controller’s capacitors are too few: they warm, dry out and fail.',
  'pack.current-burst': 'The pack gives more for seconds than it is rated for.',
  'pack.floor-voltage': 'Under a burst the cells sag below their least volts: cut-off, or harm.',
  'pack.spin-up-volts': 'While the track spins up the cells sag below their least volts: cut-off, or harm.',
  'pack.cold': 'The pack is too cold to be loaded.',
  'pack.charge-volts': 'Braking on a full pack overcharges the cells.',
  'pack.current-continuous': 'This drive takes more from the pack, hour after hour, than it is rated for.',
  'pack.temperature': 'The cells get hotter than they may.',
  'pack.charge-current': 'Braking charges the cells faster than they may be charged at this temperature.',
  'pack.fuse-continuous': 'The fuse tires and opens in ordinary driving.',
  'pack.fuse-burst': 'The fuse opens in an ordinary burst.',
  'stage.bending': 'A gear tooth of stage # breaks at its root in ordinary use.',
  'stage.peak': 'The belt or chain of stage # skips or breaks at a hard start.',
  'stage.shaft': 'The driven shaft of stage # bends for good.',
  'stage.joint': 'The driven wheel of stage # turns on its shaft.',
  'stage.limiter':
    'The torque limiter of stage # slips in ordinary use: it wears, and holds the machine back.',
  'stage.bending-lasts': 'The gear teeth of stage # crack at their roots in time.',
  'stage.flank': 'The gear flanks of stage # pit and wear away in time.',
  'stage.tension': 'The belt or chain of stage # wears out before its time.',
  'stage.power': 'The chain of stage # wears out before its time at this power.',
  'stage.contact-ratio': 'The gears of stage # run rough: at times too little of a tooth pair is in mesh.',
  'stage.shaft-lasts': 'The driven shaft of stage # cracks in time, as it bends with each turn.',
  'stage.joint-lasts': 'The driven wheel of stage # works loose on its shaft in time.',
  'stage.bearing-life': 'The bearing of stage # is worn before the hours that you want.',
  'stage.bearing-speed': 'The bearing of stage # turns too fast for grease.',
  'track.joint': 'The sprocket turns on its shaft.',
  'track.shaft': 'The sprocket’s shaft bends for good.',
  'track.tooth-shear': 'The drive teeth shear off in ordinary use.',
  'track.tooth-bending': 'The drive teeth tear at their roots in ordinary use.',
  'track.tooth-bearing': 'The drive teeth are crushed in ordinary use.',
  'track.tooth-climb': 'The drive teeth climb out of the sprocket: the track skips.',
  'track.tension': 'The loop tears in ordinary use.',
  'track.lift-off': 'Below top speed already the slack side leaves its wheels: the track can be thrown.',
  'track.mesh': 'At top speed the loop stands so far off that its teeth skip.',
  'track.tooth-shear-lasts': 'The drive teeth hold at first and shear off in time.',
  'track.tooth-bending-lasts': 'The drive teeth hold at first and crack at their roots in time.',
  'track.tooth-bearing-lasts': 'The drive teeth hold at first and are worn flat in time.',
  'track.tension-lasts': 'The loop holds at first, stretches and tears in time.',
  'track.shaft-lasts': 'The sprocket’s shaft cracks in time, as it bends with each turn.',
  'track.joint-lasts': 'The sprocket works loose on its shaft in time.',
  'track.bearing-life': 'The sprocket’s bearing is worn before the hours that you want.',
  'track.bearing-speed': 'The sprocket’s bearing turns too fast for grease.',
  'vehicle.front-lift':
    'At full pull the front comes up before the tracks spin: the machine can go over backwards.',
  'vehicle.spin-up-lift':
    'As the loops spin up, their own reaction lifts the front: the machine can go over backwards.',
  'vehicle.tip-back': 'It falls over backwards on this slope, standing still.',
  'vehicle.tip-side': 'It falls over on this side slope.',
  'vehicle.start': 'It doesn’t get going.',
  'vehicle.pivot-turn': 'It can’t turn on the spot.',
  'vehicle.clearance': 'It sinks until its belly lies on the ground.',
  'vehicle.brake-hold': 'Downhill the brakes don’t hold the speed of the drive.',
  'cooling.warming':
    'The coolant warms so much on its way that the last in line gets little cooling: more flow.',
  'cooling.boiling': 'The coolant boils.',
  'cooling.freezing': 'The coolant freezes: no flow, and burst pipes.',
  'wire.temperature': 'Wire # is too thin for this drive: its insulation softens.',
  'wire.connector': 'The connectors of wire # carry more than they are rated for.',
  'wire.burst': 'Wire # is too hot after a burst.',
  'stepdown.current': 'Supply # carries more than it is rated for.',
  'stepdown.peak': 'Supply # can’t feed all that it has to at once.',
  'stepdown.brown-out': 'Behind supply # the volts fall so far that a receiver may restart.',
  'stepdown.input': 'The pack sags below what supply # needs.',
  'converter.current': 'The converter of accessory # carries more than it is rated for.',
  'accessory.over-volts': 'A full pack gives accessory # more volts than it bears.',
}

/**
 * What happens where a limit is passed.
 *
 * @example consequenceOf('stage.2.peak') // 'The belt or chain of stage 2 skips or breaks at a hard start.'
 */
export function consequenceOf(id: LimitId): string {
  const number = /\.(\d+)\./.exec(id)?.[1] ?? ''
  const plain = id.replace(/\.\d+\./, '.')
  const known = sentences[plain]?.replace('#', number) ?? otherMishap(id)
  return known ?? `It ${breaksOf(id)}.`
}
