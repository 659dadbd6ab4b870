import { chmodSync, closeSync, fsyncSync, mkdirSync, openSync } from 'node:fs'
import { open } from 'node:fs/promises'

/** Read and written by its owner only; systems without such rights take no notice. */
const ownerOnly = { file: 0o600, folder: 0o700 } as const

/** A folder for its owner only. One that is there already is closed to others. */
export function makePrivateFolder(path: string): void {
  mkdirSync(path, { recursive: true, mode: ownerOnly.folder })
  chmodSync(path, ownerOnly.folder)
}

/** A file for its owner only: made empty where there is none, closed to others where there is. SQLite gives its log the same rights. */
export function makePrivateFile(path: string): void {
  closeSync(openSync(path, 'a', ownerOnly.file))
  chmodSync(path, ownerOnly.file)
}

/** Returns when the disk has the bytes of a file. */
export async function settleFile(path: string): Promise<void> {
  const file = await open(path, 'r+')
  try {
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Returns when the disk has the names of a folder; systems that cannot settle a folder do it by themselves. */
export function settleFolder(path: string): void {
  if (process.platform === 'win32') return
  const folder = openSync(path, 'r')
  try {
    fsyncSync(folder)
  } finally {
    closeSync(folder)
  }
}

/** Lets everything else that waits have its turn. */
export function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve))
}
