import type { Call, WeatherSource } from '#lib/server/services/sources/mapping.ts';
import { weatherSource } from '#lib/server/services/sources/input.ts';
import { slug } from '#lib/server/services/ids.ts';
import type { FormInput, FormValues } from '#lib/ui/forms/form-input.ts';
import type { ReadCall } from './read-call.ts';
import { numberOf } from './read-mapping.ts';
import { refuseSchema } from './refuse-schema.ts';

/** What stands in the fields of a source's facts before anything is typed. Limits: our choice. */
export function factValues(source: WeatherSource | null): FormValues {
	const { terms, limits } = source ?? {};
	return {
		name: source?.name ?? '',
		attribution: terms?.attribution ?? '',
		attributionUrl: terms?.attributionUrl ?? '',
		licence: terms?.licence ?? '',
		note: terms?.note ?? '',
		perDay: String(limits?.perDay ?? 500),
		minInterval_min: String(limits?.minInterval_min ?? 60)
	};
}

/** The source that the facts and calls make; `null` while anything has to be mended. */
export function readSource(
	input: FormInput,
	draft: WeatherSource | null,
	calls: readonly (Call | ReadCall)[]
): WeatherSource | null {
	const name = input.required('name', 'Give the source a name.');
	const attribution = input.required('attribution', 'Say whose data they are.');
	const source = {
		...draft,
		id: draft?.id ?? idOf(name),
		name,
		homepage: draft?.homepage ?? homepageOf(calls),
		terms: {
			attribution,
			...given('attributionUrl', input.text('attributionUrl')),
			...given('licence', input.text('licence')),
			note: input.text('note') ?? ''
		},
		limits: {
			...draft?.limits,
			perDay: numberOf(input, 'perDay') ?? 500,
			minInterval_min: numberOf(input, 'minInterval_min') ?? 60
		},
		needsKey: calls.some((call) => JSON.stringify(call).includes('{key}')),
		wantsContact: draft?.wantsContact ?? false,
		calls
	};
	if (input.issues.length > 0) return null;
	const checked = weatherSource.safeParse(source);
	if (checked.success) return checked.data;
	refuseSchema(input, checked.error.issues);
	return null;
}

function given<Name extends string>(name: Name, text: string | null) {
	return text === null ? {} : { [name]: text };
}

function idOf(name: string): string {
	const id = slug(name);
	return /^[a-z0-9][a-z0-9-]+$/.test(id) ? id : `source-${id}`;
}

/** The front page of what is asked. */
function homepageOf([call]: readonly (Call | ReadCall)[]): string {
	const address = call?.first?.[0]?.address ?? call?.address ?? '';
	return `${/^[a-z]+:\/\/[^/?#]*/i.exec(address)?.[0] ?? ''}/`;
}
