import './host/no-eval.ts'
import { mount } from 'svelte'
import App from './App.svelte'
import { findHost } from './host/find-host.ts'

const target = document.getElementById('app')
if (!target) throw new Error('index.html has no place for the page')
mount(App, { target, props: { host: await findHost() } })
