import type { Fault } from '../contract.ts';

/** What a status other than success says, and what to do; `null` for success. */
export function statusFault(
	status: number,
	host: string,
	usesKey: boolean,
	reason: string | null
): Fault | null {
	const said = reason === null ? '' : ` It says: ${reason}`;
	if (status === 401 || status === 403) {
		return {
			code: 'keyRefused',
			text: `${host} refuses access (${status}). ${accessRemedy(usesKey)}${said}`
		};
	}
	if (status === 404 || status === 410) {
		const text = `${host} has nothing at this address (${status}); check it, and that the service covers this lake.${said}`;
		return { code: 'notFound', text };
	}
	if (status === 429) {
		const text = `${host} was asked too often (429). It is left alone for a while; lower the calls a day or a minute if that goes on.${said}`;
		return { code: 'tooMany', text };
	}
	if (status >= 500) {
		const text = `${host} has trouble of its own (${status}). It is asked again later; nothing needs to be changed here.${said}`;
		return { code: 'serverFailed', text };
	}
	if (status >= 400 || status < 200 || status >= 300) {
		const text = `${host} did not take the question (${status}); check the address and what is filled into it.${said}`;
		return { code: 'refused', text };
	}
	return null;
}

function accessRemedy(usesKey: boolean): string {
	return usesKey
		? 'Check the key: it may be wrong, used up or not yet in force.'
		: 'It may want a key, or a contact in the User-Agent: set them, and read its terms.';
}
