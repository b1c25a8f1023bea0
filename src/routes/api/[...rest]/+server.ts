import { endpoint } from '../endpoint.ts';
import { Problem } from '../problem.ts';

export const fallback = endpoint(({ url }) => {
	const detail = `Nothing is at ${url.pathname}; /api/v1/openapi.json lists what there is`;
	throw new Problem(404, 'Not Found', detail);
});
