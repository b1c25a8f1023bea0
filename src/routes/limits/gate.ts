import type { RequestEvent } from '@sveltejs/kit';
import { refuseForeign } from '../own-origin.ts';
import { refuseLongForm, withReadableForm } from './form-body.ts';
import { RateLimits } from './rate-limits.ts';
import { RoomForForms } from './room.ts';

const rates = new RateLimits();
const room = new RoomForForms();

/** Answers by `work`, where there is room for what was sent. */
export function withRoom(event: RequestEvent, work: () => Promise<Response>): Promise<Response> {
	return room.within(event, work);
}

/** The refusal of a request that nobody has to look into further; `null` where it may go on. */
export function refuse(event: RequestEvent, now: Date): Response | null {
	withReadableForm(event.request);
	return refuseForeign(event) ?? refuseLongForm(event) ?? rates.refuse(event, now.getTime());
}
