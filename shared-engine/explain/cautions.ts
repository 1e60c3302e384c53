/** Cautions in plain words, each told once: in the working of the limit that it belongs to. */
const cautions: Readonly<Record<string, string>> = {
  'motor.free-rpm':
    'Magnets thrown off a rotor fly like shot. Never stand in the plane of a motor that is spun up unloaded; guard it, keep your distance, wear eye protection.',
  'controller.electrical-rpm':
    'A controller that loses step at speed can short the motor without warning. Try it with the machine held safely.',
  'track.burst-speed':
    'A loop that tears at speed whips. Stay out of its plane at the test stand and put a guard over it.',
  'track.tension':
    'A loop or joint that parts under load lets go all at once: eye protection, nobody in line with it.',
  'pack.current-continuous':
    'Lithium cells that are overloaded can vent and burn. Charge and try them where a fire does no harm; never use a pack that was punctured or swollen.',
  'pack.current-burst':
    'Lithium cells that are overloaded can vent and burn. Charge and try them where a fire does no harm; never use a pack that was punctured or swollen.',
  'pack.floor-voltage':
    'Cells drained below their floor are damaged and may fail when charged. Never charge them below freezing.',
  'motor.temperature': 'The case is cooler than the winding: a motor too hot to touch is far hotter inside.',
  'vehicle.front-lift':
    'A machine that rears can fall on whoever is behind it. Try it on the level with the throttle capped.',
}

export function cautionOf(id: string): string | undefined {
  return cautions[id]
}
