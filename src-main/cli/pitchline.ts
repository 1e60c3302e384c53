#!/usr/bin/env node
import { compiledProgram } from './compiled.ts'

// Set, not called: what was written to a pipe still has to leave.
void compiledProgram(__dirname, require)
  .start()
  .main(process.argv.slice(2))
  .then((code) => (process.exitCode = code))
