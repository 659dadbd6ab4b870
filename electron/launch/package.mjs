// npm run package. Only the guard is imported at once: an old Node could not even read the rest.
import './node-guard.mjs'

import('./packaging.mjs').then(function run(packaging) {
  return packaging.packageProgram(process.argv.slice(2))
})
