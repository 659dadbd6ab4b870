/** Gives a number or string a name the compiler keeps apart from its siblings; costs nothing at run time. */
export type Brand<Base, Name extends string> = Base & { readonly __unit: Name }
