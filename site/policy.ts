/**
 * The content-security policy that every page carries itself, for hosts that cannot send headers. A host that can
 * sends the same and `frame-ancestors`, which a page cannot say of itself.
 */
export const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  // Says of the guide's two workers that they are its own; widgets/own-script.ts.
  'trusted-types winter-bench-guide',
].join('; ');
