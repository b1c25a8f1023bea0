import type { Context } from '#lib/server/context.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import type { Call } from '#lib/server/services/sources/mapping.ts';
import {
	tryCall,
	tryInput,
	type Tried,
	type TryInput
} from '#lib/server/services/sources/try-call.ts';
import { FormInput, type FormValues, type Refusal } from '#lib/ui/forms/form-input.ts';
import { mappingValues } from './call-values.ts';
import { comparisonWords } from './comparison-words.ts';
import { readCall, type ReadCall } from './read-call.ts';
import { refuseSchema } from './refuse-schema.ts';
import { takeKey } from './take-key.ts';
import { triedDays, type TriedDays } from './tried-days.ts';
import { understoodOf } from './understood.ts';

/** What is known of the source before the form: the call that it began with, and where its key lies. */
export interface SetUpOf {
	base: Call | null;
	/** A stored source, whose key is used while the address stays on its hosts. */
	sourceId: string | null;
}

export type TryOutcome = { refusal: Refusal } | { tried: TryShown; values: FormValues };

/** Asks as the form says and tells what came. Nothing is stored but a typed key, in memory. */
export async function tryIt(
	context: Context,
	typed: FormValues,
	{ base, sourceId }: SetUpOf
): Promise<TryOutcome> {
	const { key: typedKey, ...values } = typed;
	const input = new FormInput(values);
	const call = readCall(input, base);
	const key = takeKey(context, typedKey, values, call);
	const lakeId = input.required('lake', 'Choose the lake to ask for.');
	const days = { from: input.day('from'), to: input.day('to') };
	if (input.issues.length > 0) return { refusal: input.refusal };
	const isAnew = values['suggest'] === 'yes';
	const { timeZone } = await getLake(context, lakeId);
	const usual = await triedDays(context, lakeId, call);
	const asked = { from: days.from ?? usual.from, to: days.to ?? usual.to };
	const checked = tryInput.safeParse({
		call: toTry(call, isAnew),
		name: input.text('name') ?? 'The source',
		lake: lakeId,
		...(sourceId === null ? {} : { source: sourceId }),
		...(key === null ? {} : { key }),
		station: input.text('station'),
		part: call.part === 'forecast' ? 'forecast' : 'history',
		...asked
	});
	if (!checked.success) {
		refuseSchema(input, checked.error.issues);
		return { refusal: input.refusal };
	}
	const tried = await tryCall(context, checked.data as TryInput);
	const wasSuggested = (isAnew || call.mapping === null) && tried.mapping !== null;
	if (wasSuggested && tried.mapping) Object.assign(values, mappingValues(tried.mapping));
	const shown = shownOf(tried, { asked, wasSuggested, timeZone, now: context.now() });
	return { tried: shown, values: withAttribution(values, tried.answeredBy) };
}

function toTry({ address, headers, first, format, mapping }: ReadCall, isAnew: boolean) {
	return {
		address,
		...(headers ? { headers } : {}),
		...(first ? { first } : {}),
		format,
		mapping: isAnew ? null : mapping
	};
}

interface Around {
	asked: TriedDays;
	wasSuggested: boolean;
	timeZone: string;
	now: Date;
}

/** So much of an answer is shown: enough to see its shape. */
const SHOWN_CHARACTERS = 12_000;

function shownOf(tried: Tried, { asked, wasSuggested, timeZone, now }: Around) {
	const { raw, isCut, answeredBy, status, contentType, suggestion, words, answer } = tried;
	const understood = understoodOf(answer, { timeZone, now });
	return {
		asked,
		raw: raw.slice(0, SHOWN_CHARACTERS),
		isCut: isCut || raw.length > SHOWN_CHARACTERS,
		answeredBy,
		status,
		contentType,
		hasMapping: tried.mapping !== null,
		wasSuggested,
		guesses: suggestion?.guesses ?? [],
		canSuggest: suggestion?.mapping != null,
		words,
		faults: answer.faults.map(({ text }) => text),
		isUnderstood: answer.outcome === 'ok' && understood !== null,
		hasPrecipitation: answer.hasPrecipitation,
		stationName: answer.station?.name ?? null,
		understood,
		comparison: comparisonWords(tried.comparison)
	};
}

export type TryShown = ReturnType<typeof shownOf>;

/** A first draft of whose data they are, to be put right. */
function withAttribution(values: FormValues, answeredBy: string | null): FormValues {
	if ((values['attribution'] ?? '') !== '' || answeredBy === null) return values;
	return { ...values, attribution: `Weather data from ${answeredBy.split('/')[0] ?? answeredBy}` };
}
