import { json } from '@sveltejs/kit';
import { readyMadeSources } from '#lib/server/services/sources/ready-made.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';

export const GET = endpoint(async () => json(await readyMadeSources()));

export const fallback = onlyMethods('GET');
