/** Where this copy of the guide is, with a slash at the end. */
export const guideAddress = (): string => new URL(import.meta.env.BASE_URL, location.href).href;

/** Whether addresses of this copy mean nothing on another machine (RFC 6761, section 6.3; RFC 1122, section 3.2.1.3). */
export const onlyHere = (): boolean =>
  /^(?:localhost|.*\.localhost|127(?:\.\d+){3}|\[::1\])$/u.test(location.hostname);
