import type { RequestEvent } from '@sveltejs/kit';
import { askerOf, type Asker } from './asker.ts';
import { refusal } from './refusal.ts';
import { TokenBuckets, type Pace } from './token-buckets.ts';

/** For a family or a camp behind one address, with a phone that sends what it logged offline. */
const WRITES: Pace = { burst: 120, each_s: 1 };
/** What makes this server call another one. */
const CALLS: Pace = { burst: 10, each_s: 20 };
/** On this machine imports and scripts are let through; a loop gone wild is still slowed. */
const HERE_TIMES = 100;

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Addresses whose changes call out, with the form's action where a page has several. */
const CALLING_OUT = new Set([
	'/api/v1/sources/try',
	'/api/v1/lakes/[lake]/refresh',
	'/api/v1/lakes/[lake]/refresh/earlier-winters',
	'/api/v1/lakes/[lake]/telling/webhook/test',
	'/sources?/refresh',
	'/sources/new?/try',
	'/sources/[source]/addresses/[address]?/try',
	'/lakes/[lake]/weather?/refresh',
	'/lakes/[lake]/weather?/earlierWinters',
	'/lakes/[lake]/telling?/test'
]);

type Asked = Pick<RequestEvent, 'request' | 'url' | 'route' | 'getClientAddress'>;

/** Counts changes and calls to other servers by who asks for them. */
export class RateLimits {
	readonly #writes = new Limit(WRITES);
	readonly #calls = new Limit(CALLS);

	/** The refusal of a change that comes too soon; `null` where it may go on. */
	refuse(event: Asked, now_ms: number): Response | null {
		const { request, url, route } = event;
		if (READING.has(request.method)) return null;
		const asker = askerOf(event.getClientAddress, url.hostname);
		const limit = callsOut(route.id, url) ? this.#calls : this.#writes;
		const wait_s = limit.wait_s(asker, now_ms);
		return wait_s === 0 ? null : tooMany(event, wait_s);
	}
}

function tooMany(event: Asked, wait_s: number): Response {
	const wait = wait_s === 1 ? 'a second' : `${wait_s} seconds`;
	const message = `Too much was sent from your address at once. Wait ${wait} and send it again.`;
	const headers = { 'retry-after': String(wait_s) };
	return refusal(event, { status: 429, title: 'Too Many Requests', message, headers });
}

/** One allowance for askers elsewhere and an ample one for this machine. */
class Limit {
	readonly #elsewhere: TokenBuckets;
	readonly #here: TokenBuckets;

	constructor(pace: Pace) {
		this.#elsewhere = new TokenBuckets(pace);
		this.#here = new TokenBuckets({
			burst: pace.burst * HERE_TIMES,
			each_s: pace.each_s / HERE_TIMES
		});
	}

	wait_s({ key, isHere }: Asker, now_ms: number): number {
		return (isHere ? this.#here : this.#elsewhere).take(key, now_ms);
	}
}

function callsOut(route: string | null, { searchParams }: URL): boolean {
	if (route === null) return false;
	const action = [...searchParams.keys()].find((name) => name.startsWith('/')) ?? '';
	return CALLING_OUT.has(route) || CALLING_OUT.has(`${route}?${action}`);
}
