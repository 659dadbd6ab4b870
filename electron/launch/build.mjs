// npm run build. Only the guard is imported at once: an old Node could not even read the rest.
import './node-guard.mjs'

import('./builder.mjs').then(function run(builder) {
  return builder.buildStale(builder.targetNames, console.log)
})
