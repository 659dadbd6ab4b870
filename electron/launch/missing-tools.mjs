// Packages that build the program lie only in a checkout with its development packages.

const missingTools =
  'The packages that build Coatwright are not installed. Run "npm ci" without --omit=dev (and with NODE_ENV not set to production), then try again.'

/** What `load` imports; where a package is missing, ends the program with a sentence. */
export async function loadTools(load) {
  try {
    return await load()
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error
    console.error(missingTools)
    process.exit(1)
  }
}
