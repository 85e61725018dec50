/** The address of a page or file of the guide: `path` from its top, under whatever folder the host gives it. */
export const address = (path: `/${string}`): string => import.meta.env.BASE_URL.replace(/\/$/u, '') + path;
