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
	if (status === 204 || status === 205) {
		const text = `${host} has nothing to say to this question (${status}); check the days and the position that the address asks for.`;
		return { code: 'empty', text };
	}
	if (status === 206) {
		const text = `${host} sent only a part of its answer (${status}). Nothing of it is used; it is asked again later.`;
		return { code: 'truncated', text };
	}
	if (status >= 400 || status < 200 || status >= 300) {
		const text = `${host} did not take the question (${status}); check the address and what is filled into it.${said}`;
		return { code: 'refused', text };
	}
	return null;
}

/** What a status says beside an answer that can be used, or `null`. */
export function statusNotice(status: number, host: string): Fault | null {
	if (status !== 203) return null;
	const text = `${host} answered, and says with status 203 that its answer was changed on the way, or that this address will go (some weather services mean that by it): look in its documentation for the address that takes its place.`;
	return { code: 'deprecated', text };
}

function accessRemedy(usesKey: boolean): string {
	return usesKey
		? 'Check the key: it may be wrong, used up or not yet in force.'
		: 'It may want a key, or a contact in the User-Agent: set them, and read its terms.';
}
