import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'

const page = path.join('dist', 'page', 'assets')

it('the built page is the one for use: without the checks that its framework brings for developing', () => {
  const scripts = readdirSync(page).filter((name) => name.endsWith('.js'))
  expect(scripts.length).toBeGreaterThan(0)
  // The name under which the framework's development half keeps its changes to JavaScript's own arrays.
  const framework = readFileSync('node_modules/svelte/src/internal/client/dev/equality.js', 'utf8')
  expect(framework).toContain('__svelte_cleanup')
  const inDevelopment = scripts.filter((name) =>
    readFileSync(path.join(page, name), 'utf8').includes('__svelte_cleanup'),
  )
  expect(inDevelopment).toEqual([])
})
