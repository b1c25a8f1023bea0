import type { Ask, Fault } from './contract.ts';
import type { Call, WeatherSource } from './schema.ts';
import { mentions } from './template.ts';

type Addresses = Pick<Call, 'address' | 'first' | 'headers'>;

/** What must be set before a source is asked, or `null`. */
export function missingNeed(
	{ name, needsKey, wantsContact }: Pick<WeatherSource, 'name' | 'needsKey' | 'wantsContact'>,
	call: Addresses,
	{ key, contact, station }: Ask
): Fault | null {
	const places = templatesOf(call);
	if ((needsKey || mentions(places, 'key')) && !key)
		return need(`${name} needs a key; get one from the service and enter it with the source.`);
	if (key && !/^[\x21-\x7e]+$/.test(key) && mentions(headersOf(call), 'key'))
		return need(
			`The key of ${name} has a blank or a letter in it that can not be sent; copy it again.`
		);
	if (wantsContact && !contact)
		return need(
			`${name} wants to know whom to reach; set an address or a page in FROSTLEDGER_CONTACT.`
		);
	if (mentions(places, 'station') && !station)
		return need(`${name} is asked by station; enter the station for this lake.`);
	return null;
}

/** True where a key is part of the call. */
export function usesKey(call: Addresses): boolean {
	return mentions(templatesOf(call), 'key');
}

function templatesOf(call: Addresses): string[] {
	const steps = call.first ?? [];
	return [call.address, ...steps.map(({ address }) => address), ...headersOf(call)];
}

function headersOf({ headers = {}, first = [] }: Addresses): string[] {
	return [headers, ...first.map((step) => step.headers ?? {})].flatMap((each) =>
		Object.values(each)
	);
}

function need(text: string): Fault {
	return { code: 'notConfigured', text };
}
