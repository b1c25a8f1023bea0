import { json } from '@sveltejs/kit';
import { endpoint, onlyMethods } from '../../endpoint.ts';
import { openApiDocument } from './document.ts';

export const GET = endpoint(() => json(openApiDocument()));

export const fallback = onlyMethods('GET');
