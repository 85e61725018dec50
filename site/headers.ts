import { policy } from './policy.ts';

/** The policy as a header: what every page carries itself, and who may frame it, which only a host can say. */
export const policyLine = `${policy}; frame-ancestors 'none'`;

/**
 * The headers that a host of the guide sends with every file. A public host adds Strict-Transport-Security, which
 * has no place on a machine's own address.
 */
export const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policyLine,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** For public hosts alone, on a name of their own: browsers ask by TLS from then on. Half a year and more [s]. */
export const strictTransport = { 'Strict-Transport-Security': 'max-age=31536000' } as const;
