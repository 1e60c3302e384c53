import type { Locator, Page } from '@playwright/test'
import { answer, begin, entry, limit, limits, question, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

// What a builder asks of heat, current and duty, on a machine entered from scratch (demo): the guided start, then its
// cooling, wires, capacitors and brakes, each answer read as a person reads it.

type Entered = readonly (readonly [key: string, text: string])[]

async function fill(page: Page, part: string, entered: Entered): Promise<void> {
  await showPart(page, part)
  for (const [key, text] of entered) {
    const field = entry(page, key)
    if ((await field.evaluate((element) => element.tagName)) === 'SELECT') await field.selectOption(text)
    else {
      await field.fill(text)
      await field.press('Tab')
    }
  }
}

/** What a person reads there, each blank and break one blank. */
const says = (place: Locator, words: RegExp) =>
  expect.poll(async () => (await place.innerText()).replace(/\s+/g, ' '), { timeout: 30_000 }).toMatch(words)

const add = (page: Page, name: RegExp): Locator =>
  region(page, 'Fields of a part').getByRole('button', { name })

async function enterAMachine(page: Page): Promise<void> {
  await begin(page)
  await page.keyboard.press('Alt+n')
  for (const [name, text] of [
    ['Motor: Kv', '170'],
    ['Pack: cells in series', '12'],
    ['Capacity', '16000'],
    ['First reduction', '8'],
    ['Machine, all-up', '65'],
  ] as const)
    await page.getByRole('textbox', { name, exact: true }).fill(text)
  await fill(page, 'motor', [
    ['motor.count', '2'],
    ['motor.windingToCaseKPerW', '0.35'],
    ['motor.caseToSinkKPerW', '0.25'],
    ['motor.windingHeatCapacityJPerK', '60'],
    ['motor.caseHeatCapacityJPerK', '380'],
  ])
  await fill(page, 'controller', [
    ['controller.pwmKhz', '16'],
    ['controller.switchingNs', '200'],
    ['controller.heatCapacityJPerK', '80'],
    ['controller.thermalResistanceKPerW', '1'],
    ['controller.maxTemperatureC', '85'],
    ['controller.busCapacitanceMicrofarad', '1000'],
    ['controller.busRippleAmps', '12'],
    ['controller.busRatedVolts', '63'],
    ['controller.maxVolts', '60'],
    ['controller.brakeAmps', '30'],
  ])
  await fill(page, 'pack', [
    ['pack.fuseAmps', '120'],
    ['pack.chargeC', '1'],
  ])
  await fill(page, 'ground', [['ground.airTemperatureC', '-10']])
  await showPart(page, 'cooling')
  await add(page, /^(Add|Enter) /).click()
  await fill(page, 'cooling', [
    ['cooling.flowLPerMin', '0.6'],
    ['cooling.radiatorWPerK', '8'],
  ])
  await showPart(page, 'wires')
  await add(page, /^(Add|Enter) /).click()
  await fill(page, 'wires', [
    ['wires.0.areaMm2', '6'],
    ['wires.0.lengthM', '1.2'],
  ])
}

test('a machine entered from scratch: will it cook, the pump, the wire, the capacitors, the brakes, the alarms', async ({
  open,
}) => {
  const { page } = await open()
  await enterAMachine(page)
  await question(page, 'How hot, how long').click()

  // Will it cook in my kind of drive?
  await says(
    answer(page).locator('p').first(),
    /The winding settles at −?[\d.]+ °C, [\d.]+ K (below|above) its limit/,
  )
  const drive = region(page, 'Over a drive')
  await drive.getByLabel('Drive', { exact: true }).selectOption('Long climb')
  await says(
    drive.locator('p').first(),
    /Long climb takes .* none of the limits watched on the way is passed|is passed .* into Long climb|reserve .* into Long climb/,
  )
  await says(drive, /Hottest winding −?[\d.]+ °C at [\d.]+ (min|s)/)

  // How fast must the pump turn in January and in July?
  await says(
    answer(page).locator('[data-weather="words"]'),
    /^At −10\S* °C [\d.]+ L\/min is enough for this drive\. At 30\S* °C [\d.]+ L\/min\. Below −[\d.]+ °C this coolant freezes\.$/,
  )

  // Is this wire thick enough? Are the capacitors enough? Does braking on a full pack kill the controller?
  for (const name of [
    /Wire 1, warm through/,
    /Wire 1, after a burst/,
    /Wire 1, protected by the fuse/,
    /Ripple current of the capacitors/,
    /Volts at the controller/,
    /Pack volts while braking, full pack/,
    /Charging current while braking/,
  ])
    await expect(limit(page, name).first(), String(name)).toBeAttached()
  // What is past its limit is said in a sentence.
  await says(limits(page), /Charging current while braking/)

  // What must my alarms say?
  const card = region(page, 'Alarm card')
  await says(card, /Set .* to alarm when (above|below) [\d,.]+ \S+/)
  await says(card.locator('[data-alarm="pack-volts"]'), /alarm when below [\d.]+ V/)
  await says(card.locator('[data-alarm="case"]'), /alarm when above [\d.]+ °C/)
})
