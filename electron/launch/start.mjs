// npm start. Only the guard is imported at once: an old Node could not even read the rest.
import './node-guard.mjs'

import('./program.mjs').then(function run(program) {
  return program.startProgram(process.argv.slice(2))
})
