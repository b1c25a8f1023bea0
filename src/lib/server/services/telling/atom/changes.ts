import { createHash } from 'node:crypto';
import type { MessageRow } from '../../../storage/telling-messages.ts';
import { element, emptyElement } from './xml.ts';

export interface ChangesFacts {
	lake: { id: string; name: string };
	/** The newest first. */
	messages: readonly MessageRow[];
	/** When anything of the feed last changed. */
	changedAt: string;
	/** What tells this feed from another, and goes when it is made anew. */
	feedMadeAt: string;
	/** Where the app is reached, without a slash at its end. */
	base: string;
	/** The whole address of the feed. */
	self: string;
}

/** An Atom feed (RFC 4287) of what was told. */
export function changesText(facts: ChangesFacts): string {
	const { lake, messages, changedAt, base, self } = facts;
	const page = `${base}/lakes/${lake.id}`;
	return [
		'<?xml version="1.0" encoding="utf-8"?>',
		'<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">',
		element('id', `urn:uuid:${feedId(facts)}`),
		element('title', `${lake.name}: changes of the ice`),
		element('subtitle', 'A forecast, not a permission: a drilled hole decides.'),
		element('updated', changedAt),
		`<author>${element('name', 'Frostledger')}</author>`,
		emptyElement('link', { rel: 'self', type: 'application/atom+xml', href: self }),
		emptyElement('link', { rel: 'alternate', type: 'text/html', href: page }),
		...messages.map((message) => entryOf(message, lake.name, page)),
		'</feed>',
		''
	].join('\n');
}

function entryOf(message: MessageRow, lakeName: string, page: string): string {
	return [
		'<entry>',
		element('id', `urn:uuid:${message.id}`),
		element('title', `${lakeName}: ${message.title}`),
		element('published', message.made_at),
		element('updated', message.changed_at),
		emptyElement('link', { rel: 'alternate', type: 'text/html', href: page }),
		emptyElement('category', { term: message.kind }),
		element('content', message.text, { type: 'text' }),
		'</entry>'
	].join('\n');
}

/** A UUID made from a name (RFC 9562, version 8), the same for as long as the feed is. */
function feedId({ lake, feedMadeAt }: ChangesFacts): string {
	const hex = createHash('sha256').update(`${lake.id} ${feedMadeAt}`).digest('hex');
	const parts = [
		hex.slice(0, 8),
		hex.slice(8, 12),
		`8${hex.slice(13, 16)}`,
		`8${hex.slice(17, 20)}`
	];
	return [...parts, hex.slice(20, 32)].join('-');
}
