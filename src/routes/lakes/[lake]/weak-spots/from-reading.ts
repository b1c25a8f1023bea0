import { redirect, type RequestEvent } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { getReading } from '#lib/server/services/readings.ts';
import {
	addWeakSpot,
	getWeakSpot,
	updateWeakSpot,
	weakSpotInput
} from '#lib/server/services/places/weak-spots.ts';
import { FormInput } from '#lib/ui/forms/form-input.ts';
import { day } from '#lib/ui/format/day.ts';
import { found } from '../found.ts';
import { todayAt } from '../today-at.ts';
import { refuseSpot } from './refusals.ts';

/** Form action: puts the place of a reading where the ice broke on the list. */
export async function brokeHere({ params, request, locals }: RequestEvent<{ lake: string }>) {
	const id = String((await request.formData()).get('id'));
	const { on, place } = await found(getReading(locals.context, params.lake, id));
	const name = place?.slice(0, 120) ?? `Broke through on ${day(on)}`;
	const input = weakSpotInput.parse({ name, kind: 'brokeThrough', checkedOn: on });
	const stored = await found(addWeakSpot(locals.context, params.lake, input));
	if (stored.status !== 'stored') return refuseSpot(new FormInput({}), stored);
	redirect(303, `?stored=${stored.spot.id}`);
}

/** Form action: somebody has looked at a weak spot today. */
export async function checkedToday({ params, request, locals }: RequestEvent<{ lake: string }>) {
	const id = String((await request.formData()).get('id'));
	await oneAtATime(locals.context, params.lake, async () => {
		const { name, kind, position, remark } = await found(
			getWeakSpot(locals.context, params.lake, id)
		);
		const checkedOn = await todayAt(locals.context, params.lake);
		const input = weakSpotInput.parse({ name, kind, ...position, remark, checkedOn });
		await found(updateWeakSpot(locals.context, params.lake, id, input));
	});
	redirect(303, `?stored=${id}`);
}
