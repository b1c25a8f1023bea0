import type { RequestEvent } from '@sveltejs/kit';
import { logFailure } from '#lib/server/services/failure.ts';
import { troubleOf } from '#lib/server/services/storage-trouble.ts';
import { refusal } from './refusal.ts';

/** Tells of a full disk and the like where it is found before a page of ours may tell it. */
export async function toldInTrouble(
	event: Pick<RequestEvent, 'request' | 'url'>,
	work: () => Promise<Response>
): Promise<Response> {
	try {
		return await work();
	} catch (cause) {
		const trouble = troubleOf(cause);
		if (trouble === null) throw cause;
		const id = logFailure(`${event.request.method} ${event.url.pathname}`, cause);
		const message = `${trouble}. It is in the log by the number ${id}.`;
		return refusal(event, { status: 503, title: 'Service Unavailable', message });
	}
}
