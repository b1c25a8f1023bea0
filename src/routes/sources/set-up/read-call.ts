import type { Call } from '#lib/server/services/sources/mapping.ts';
import type { FormInput } from '#lib/ui/forms/form-input.ts';
import { numberOf, readMapping } from './read-mapping.ts';

const MOST_FIRST = 3;
/** Days in one call where nothing else is said: a month is answered by most services. Our choice. */
const USUAL_CHUNK_D = 31;
const LONGEST_CHUNK_D = 400;

/** The call that the fields say, still to pass the schema. `base` is the one that they began with. */
export function readCall(input: FormInput, base: Call | null) {
	const format = input.text('format') === 'csv' ? 'csv' : 'json';
	const address = input.required('address', 'Type or paste the address that answers.');
	const first = firstCalls(input, base);
	const headers = headersOf(input);
	const back_d = numberOf(input, 'back_d');
	const ahead_d = numberOf(input, 'ahead_d');
	const lag_h = numberOf(input, 'lag_h');
	return {
		part: input.text('part') ?? 'both',
		...(first.length > 0 ? { first } : {}),
		address,
		...(headers ? { headers } : {}),
		format,
		chunk_d:
			numberOf(input, 'chunk_d') ?? usualChunk_d([address, ...first.map((step) => step.address)]),
		reach: {
			...(back_d === undefined ? {} : { back_d }),
			...(ahead_d === undefined ? {} : { ahead_d }),
			...(lag_h === undefined ? {} : { lag_h })
		},
		mapping: readMapping(input, format)
	};
}

export type ReadCall = ReturnType<typeof readCall>;

/** An address that does not say which days it wants answers once for all. */
function usualChunk_d(addresses: readonly string[]): number {
	const asksForDays = addresses.some((address) => /\{(from|to)\b/.test(address));
	return asksForDays ? USUAL_CHUNK_D : LONGEST_CHUNK_D;
}

function firstCalls(input: FormInput, base: Call | null) {
	return Array.from({ length: MOST_FIRST }, (_, at) => at).flatMap((at) => {
		const address = input.text(`first.${at}.address`);
		if (address === null) return [];
		const next = input.required(
			`first.${at}.next`,
			'Say where in its answer the next address stands.'
		);
		const before = base?.first?.[at];
		const headers = before?.address === address ? before.headers : undefined;
		return [{ address, next, ...(headers ? { headers } : {}) }];
	});
}

/** One header a line, as `name: value`. */
function headersOf(input: FormInput): Record<string, string> | null {
	const lines = (input.text('headers') ?? '').split(/\r?\n/).filter((line) => line.trim() !== '');
	const fields = lines.map((line) => {
		const at = line.indexOf(':');
		if (at < 1) {
			input.refuse('headers', `“${line.trim()}” is not a header. Write it as name: value.`);
			return ['', ''] as const;
		}
		return [line.slice(0, at).trim(), line.slice(at + 1).trim()] as const;
	});
	return lines.length > 0 ? Object.fromEntries(fields) : null;
}
