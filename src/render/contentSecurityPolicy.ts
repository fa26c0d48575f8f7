/**
 * What a page may load: only files of this site. WebAssembly is for the search index.
 * Scripts may not turn text into markup (Trusted Types); the one policy, `bench-book`, names worker scripts.
 */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types bench-book',
].join('; ');
