/** 16 hexadecimal digits; texts that differ differ in it but for one chance in 2^64. FNV-1a, 64 bit (IETF draft-eastlake-fnv). */
export function fingerprint(text: string): string {
  let hash = 0xcbf29ce484222325n
  for (let index = 0; index < text.length; index++) {
    hash ^= BigInt(text.charCodeAt(index))
    hash = BigInt.asUintN(64, hash * 0x100000001b3n)
  }
  return hash.toString(16).padStart(16, '0')
}
