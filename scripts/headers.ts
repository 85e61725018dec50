/**
 * What a host of the guide should say with every file. The pages hold nothing inline and ask nobody else for
 * anything, so the strictest policy fits: scripts, styles, pictures and fonts from the guide itself alone, and no
 * text that turns into markup (trusted types).
 */
export const contentSecurityPolicy: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'manifest-src': "'self'",
  'worker-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
  'require-trusted-types-for': "'script'",
};

/** The policy as one line of a header. */
export const policyLine = Object.entries(contentSecurityPolicy)
  .map(([directive, value]) => `${directive} ${value}`)
  .join('; ');

/**
 * The headers that a host sends with every file. A public host adds Strict-Transport-Security, which has no place
 * on a machine's own address.
 */
export const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policyLine,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};
