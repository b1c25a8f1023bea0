import { error } from '@sveltejs/kit';
import { MESSAGE_KINDS } from '#lib/model/telling/message.ts';
import type { FeedKind } from '#lib/server/services/telling/feeds.ts';
import type { FormInput } from '#lib/ui/forms/form-input.ts';
import { readTypedNumber } from '#lib/ui/forms/typed-number.ts';
import { KIND_BOX, LOAD_BOX, SITE_BOX } from './boxes.ts';

export function readWhat(input: FormInput): unknown {
	const loads = tickedOf(input, LOAD_BOX);
	const sites = tickedOf(input, SITE_BOX);
	const hasSites = input.values['sites'] !== undefined;
	if (hasSites && sites.length === 0) input.refuse('sites', 'Tick one site or more.');
	const { value, problem } = readTypedNumber(input.values['readingAfter_d'] ?? '');
	if (problem !== null) input.refuse('readingAfter_d', problem);
	else if (value === null) input.refuse('readingAfter_d', 'Type a number of days, from 3 to 60.');
	else if (!Number.isInteger(value)) input.refuse('readingAfter_d', 'Type whole days.');
	const { measure, mass } = input.values;
	return {
		loads,
		...(hasSites ? { sites } : {}),
		readingAfter_d: value,
		...(measure === undefined || mass === undefined ? {} : { units: { measure, mass } })
	};
}

function tickedOf(input: FormInput, box: string): string[] {
	return Object.keys(input.values)
		.filter((name) => name.startsWith(box))
		.map((name) => name.slice(box.length));
}

export function readKinds(input: FormInput): string[] {
	const kinds = MESSAGE_KINDS.filter((kind) => input.values[`${KIND_BOX}${kind}`] !== undefined);
	if (kinds.length === 0) input.refuse('kinds', 'Tick one kind of message or more.');
	return kinds;
}

export function readWebhook(input: FormInput): unknown {
	const address = input.required('address', 'Type the address that messages are sent to.');
	return { address, kinds: readKinds(input) };
}

export function feedKindOf(form: FormData): FeedKind {
	const kind = form.get('kind');
	if (kind !== 'calendar' && kind !== 'changes') error(400, 'There is no such feed.');
	return kind;
}
