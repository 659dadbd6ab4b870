// npm run plan. Only the guard is imported at once: an old Node could not even read the rest.
import './node-guard.mjs'

import('./command.mjs').then(function run(command) {
  return command.runPlan(process.argv.slice(2))
})
