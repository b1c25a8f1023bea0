import { json } from '@sveltejs/kit';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { readForecast } from '../../../read-forecast.ts';

export const GET = endpoint(async (event) => json(await readForecast(event)));

export const fallback = onlyMethods('GET');
