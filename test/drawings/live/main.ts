import '@fontsource-variable/source-sans-3'
import { mount } from 'svelte'
import Harness from './Harness.svelte'

mount(Harness, { target: document.body })
