import { lightFormat } from 'date-fns';
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Ask } from './contract.ts';
import { startOfDay_s } from './lake-days.ts';

const PLACEHOLDER = /\{([^{}]*)\}/g;
const NAMES = ['latitude', 'longitude', 'elevation', 'timeZone', 'station', 'key', 'next'];

/** Of a day: patterns such as `yyyy-MM-dd`, or its first instant in one of these. */
const INSTANTS = ['iso', 'epoch_s', 'epoch_ms'];
const PATTERN = /^(?=.*[yMd])(?:[yMdHms]|[-/._: ]|'[^']{0,10}')+$/;

/** Four decimals are 11 m: nearer than any weather, and the most that some services allow. */
const DECIMALS = 4;

/** Why a text can't be an address with places to fill in, or `null`. */
export function templateProblem(template: string): string | null {
	for (const [whole, inside = ''] of template.matchAll(PLACEHOLDER)) {
		if (!isPlaceholder(inside)) return unknownPlaceholder(whole);
	}
	const bare = template.replace(PLACEHOLDER, 'x');
	if (/[{}\s]/.test(bare))
		return 'has a brace or a blank that belongs to nothing; write a blank as %20';
	if (template.startsWith('{next}')) return null;
	const host = /^https?:\/\/([^/?#]*)/i.exec(template)?.[1];
	if (host === undefined) return 'must begin with https:// or http://';
	if (host.includes('@'))
		return 'must not hold a user name or password; put {key} where the key goes';
	if (/[{}]/.test(host)) return 'must name its host in full; {…} may stand behind it';
	return URL.canParse(bare) ? null : 'is not an address that can be read';
}

function unknownPlaceholder(whole: string): string {
	return `${whole} is not known; use ${NAMES.map((name) => `{${name}}`).join(', ')}, {from} or {to}, with a form as in {from:yyyy-MM-dd}, {from:iso} or {from:epoch_s}`;
}

/** Why a header can't be sent, or `null`. */
export function headerProblem(name: string, value: string): string | null {
	if (!/^[a-z0-9!#$%&'*+.^_`|~-]+$/i.test(name)) return 'is not the name of a header';
	if (OURS.test(name)) return 'is set by this app and can not be changed here';
	if (!/^[\t\x20-\x7e]*$/.test(value)) return 'must be plain text on one line';
	for (const [whole, inside = ''] of value.matchAll(PLACEHOLDER)) {
		if (inside !== 'key') return `${whole} is not known in a header; only {key} is`;
	}
	return null;
}

const OURS =
	/^(host|connection|content-.*|transfer-encoding|accept-encoding|user-agent|cookie|if-.*|range|te|upgrade|keep-alive|expect|trailer|proxy-.*|sec-.*|origin|referer|via)$/i;

function isPlaceholder(inside: string): boolean {
	const [name = '', ...rest] = inside.split(':');
	if (name !== 'from' && name !== 'to') return rest.length === 0 && NAMES.includes(name);
	const form = rest.join(':');
	return rest.length === 0 || INSTANTS.includes(form) || (form.length <= 40 && PATTERN.test(form));
}

export interface Filled {
	from: IsoDate;
	to: IsoDate;
	next: string | null;
}

/** The address of a call. What is filled in is encoded, so that it can not become another part. */
export function fillAddress(template: string, ask: Ask, span: Filled): string {
	const known = ask.elevation_m === null ? withoutElevation(template) : template;
	return known.replace(PLACEHOLDER, (whole, inside: string, offset: number) => {
		const value = valueOf(inside, ask, span);
		return inside === 'next' && offset === 0 ? value : encodeURIComponent(value);
	});
}

/** A height that is not known is not asked for: services then take their own. */
function withoutElevation(template: string): string {
	return template.replace(/(?<=[?&])[^?&=#]+=\{elevation\}(?:&|$)/, '').replace(/[?&]$/, '');
}

export function fillHeader(value: string, key: string | null): string {
	return value.replaceAll('{key}', key ?? '');
}

/** True where some part of a call needs this to be filled in. */
export function mentions(templates: readonly string[], name: string): boolean {
	return templates.some((template) => template.includes(`{${name}}`));
}

function valueOf(inside: string, ask: Ask, { from, to, next }: Filled): string {
	const [name = '', ...rest] = inside.split(':');
	switch (name) {
		case 'latitude':
			return decimals(ask.latitude);
		case 'longitude':
			return decimals(ask.longitude);
		case 'elevation':
			return ask.elevation_m === null ? '' : String(Math.round(ask.elevation_m));
		case 'timeZone':
			return ask.timeZone;
		case 'station':
			return ask.station ?? '';
		case 'key':
			return ask.key ?? '';
		case 'next':
			return next ?? '';
		case 'from':
			return dayText(from, from, rest.join(':'), ask.timeZone);
		default:
			return dayText(to, addDays(to, 1), rest.join(':'), ask.timeZone);
	}
}

function decimals(degrees: number): string {
	return String(Number(degrees.toFixed(DECIMALS)));
}

/** An instant is the start of `from` and the end of `to`; a pattern names the day itself. */
function dayText(on: IsoDate, boundary: IsoDate, form: string, timeZone: string): string {
	if (!INSTANTS.includes(form)) {
		const [year = 0, month = 1, day = 1] = on.split('-').map(Number);
		return lightFormat(new Date(year, month - 1, day), form || 'yyyy-MM-dd');
	}
	const at_s = startOfDay_s(boundary, timeZone);
	if (form === 'epoch_s') return String(at_s);
	if (form === 'epoch_ms') return String(at_s * 1000);
	return new Date(at_s * 1000).toISOString().replace('.000Z', 'Z');
}
