// npm run build [-- target ...]. Only the guard is imported at once: an old Node could not even read the rest.
import './node-guard.mjs'

import('./builder.mjs').then(function run(builder) {
  const named = process.argv.slice(2)
  return builder.buildStale(named.length > 0 ? named : builder.targetNames, console.log)
})
