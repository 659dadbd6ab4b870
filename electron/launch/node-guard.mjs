// Says plainly when Node is too old. Written so that an old Node can still read it: no newer syntax, no imports.

/** better-sqlite3 crashes the whole process on anything older. */
export const oldestNode = '22.12.0'

/** The sentence for a Node that is too old, or null where it is new enough. */
export function oldNodeSentence(version) {
  if (!isOlder(version.split('.'), oldestNode.split('.'))) return null
  return (
    'Coatwright needs Node ' +
    oldestNode +
    ' or newer, and this is Node ' +
    version +
    '. ' +
    'On Linux x64 run "npm ci" and then "npm start": npm ci brings a newer Node along. ' +
    'Elsewhere install a newer Node first.'
  )
}

function isOlder(version, wanted) {
  for (let place = 0; place < wanted.length; place++) {
    const difference = Number(version[place]) - Number(wanted[place])
    if (difference !== 0) return difference < 0
  }
  return false
}

/** Ends the program with the sentence where Node is too old. */
function guardNode() {
  const sentence = oldNodeSentence(process.versions.node)
  if (sentence === null) return
  console.error(sentence)
  process.exit(1)
}

guardNode()
