import { openHttp, type HttpClient } from '@libsql/hrana-client';
import type { DatabaseAddress } from './address.ts';

/** A server that says nothing for so long is taken for one that is away. */
const TIME_OUT_MS = 30_000;

export function openClient({ url, token }: DatabaseAddress): HttpClient {
	const timely = (request: Request) => fetch(request, { signal: AbortSignal.timeout(TIME_OUT_MS) });
	return openHttp(url, token ?? undefined, timely);
}
