import type { APIRoute } from 'astro';
import { searchIndex } from '../search/findings.ts';

/** What the search looks in; loaded when a reader first searches. */
export const GET: APIRoute = async () => Response.json(await searchIndex());
