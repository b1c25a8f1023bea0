import type { Ask, Fault } from './contract.ts';
import { isSameHost } from './http/same-host.ts';
import { redact } from './redact.ts';
import { fillAddress, type Filled } from './template.ts';

/** Where a call goes. */
export interface Placed {
	url: URL;
	/** The host that the source itself names: headers and key go there only. */
	homeUrl: URL;
}

/** Where a template leads. What an answer names is not trusted with the key of another host. */
export function placeOf(
	template: string,
	ask: Ask,
	filling: Filled,
	before: Placed | null
): Placed | Fault {
	const isNamed = template.startsWith('{next}') && before !== null;
	const text = fillAddress(template, ask, filling);
	const base = isNamed ? before.url : undefined;
	if (!URL.canParse(text, base)) return noAddress(before?.url.hostname ?? 'The source');
	const url = new URL(text, base);
	if (!isNamed) return { url, homeUrl: url };
	const { homeUrl } = before;
	if (before.url.protocol === 'https:' && url.protocol === 'http:') return downgraded(homeUrl);
	// The key may come back in what the service names, too.
	const hasKey = template.includes('{key}') || redact(url.href, ask.key) !== url.href;
	if (hasKey && !isSameHost(url, homeUrl)) return otherHost(homeUrl, url);
	return { url, homeUrl };
}

function noAddress(name: string): Fault {
	const text = `${name} names a next address that is none; its answers may have changed.`;
	return { code: 'badMapping', text };
}

function downgraded({ hostname }: URL): Fault {
	const text = `${hostname} names a next address without https, where anyone on the way could change the weather; it is not called.`;
	return { code: 'addressNotAllowed', text };
}

function otherHost(home: URL, { hostname }: URL): Fault {
	const text = `${home.hostname} names a next address at ${hostname}, and the key is kept for ${home.hostname} only; enter the second host by name in the source if it is right.`;
	return { code: 'addressNotAllowed', text };
}
