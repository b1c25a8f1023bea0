import { json } from '@sveltejs/kit';
import { endpoint, onlyMethods } from '../../endpoint.ts';

export const GET = endpoint(() => json({ status: 'ok' }));

export const fallback = onlyMethods('GET');
