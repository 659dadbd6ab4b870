// The reader of PDF files counts on `Promise.withResolvers`, which Chromium has since 119; the desktop journeys may run on 114.
if (!('withResolvers' in Promise)) Object.assign(Promise, { withResolvers })

function withResolvers() {
  let settle: Parameters<ConstructorParameters<typeof Promise>[0]> | null = null
  const promise = new Promise((...both) => {
    settle = both
  })
  const [resolve, reject] = settle ?? []
  return { promise, resolve, reject }
}

export {}
