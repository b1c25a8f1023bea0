import { error, type RequestEvent } from '@sveltejs/kit';
import { isForm } from './is-form.ts';
import { refusal } from './refusal.ts';

/** Ample for what people type: a hundred holes have some 20 kB, the description of a source 50. */
const TYPED_B = 1_000_000;
/** Pages that take files. Each says in its own words what it takes; this is what may reach it. */
const WITH_FILE_B: Readonly<Record<string, number>> = {
	'/lakes/[lake]/readings': 6_000_000,
	'/lakes/[lake]/weak-spots': 2_000_000,
	'/lakes/[lake]/weather': 66_000_000,
	'/storage/bring': 20_000_000
};

type Asked = Pick<RequestEvent, 'request' | 'url' | 'route'>;

/**
 * Refuses a form that is too long for its page, or does not say how long it is, before it is read:
 * a form is read whole into memory. `null` where it may be read. What is no form is read as it
 * comes, by handlers with limits of their own.
 */
export function refuseLongForm(event: Asked): Response | null {
	const { request, route } = event;
	if (!isForm(request.headers) || request.body === null) return null;
	const said = request.headers.get('content-length');
	if (said === null || !/^\d+$/.test(said)) {
		const message = 'A form has to say how long it is, in the header Content-Length.';
		return refusal(event, { status: 411, title: 'Length Required', message });
	}
	const most_B = WITH_FILE_B[route.id ?? ''] ?? TYPED_B;
	if (Number(said) <= most_B) return null;
	const message = `This form may have ${most_B / 1e6} MB at most, and ${(Number(said) / 1e6).toFixed(1)} MB were sent. Send less at once.`;
	return refusal(event, { status: 413, title: 'Content Too Large', message });
}

/** The request, with 400 instead of a failure of ours where what came is no form. */
export function withReadableForm(request: Request): Request {
	const read = request.formData.bind(request);
	request.formData = async () => {
		try {
			return await read();
		} catch (cause) {
			// Kit's own, where more came than was said.
			if (cause instanceof Error && 'status' in cause) throw cause;
			error(
				400,
				'What was sent cannot be read as a form. Load the page again and send it once more.'
			);
		}
	};
	return request;
}
