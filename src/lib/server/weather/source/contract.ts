import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Mapping } from './schema.ts';

export {
	mapping,
	trialCall,
	weatherSource,
	type Call,
	type Mapping,
	type TrialCall,
	type WeatherSource
} from './schema.ts';
export { DEFAULT_SETTINGS } from './settings.ts';
export { answersTogether, callFor, spansOf, type Span } from './spans.ts';
export { fetchBoth, fetchWeather } from './fetch-weather.ts';
export { overBy } from './checks/made-by.ts';
export { suggestMapping } from './suggest-mapping.ts';
export { trySource } from './try-source.ts';

/** What is asked of a source for one lake. A span longer than a call's `chunk_d` makes several calls. */
export interface Ask {
	latitude: number;
	longitude: number;
	elevation_m: number | null;
	/** IANA name of the lake's own time zone. */
	timeZone: string;
	/** Days of the lake's calendar, both included. */
	from: IsoDate;
	to: IsoDate;
	part: 'history' | 'forecast';
	key: string | null;
	/** Where the operator can be reached: an address or a page, for the User-Agent. */
	contact: string | null;
	/** For sources whose address holds `{station}`. */
	station: string | null;
	validators: Validators | null;
	now: Date;
	signal?: AbortSignal;
}

/** What makes the next call of the same address conditional. Kept as it is and handed back. */
export interface Validators {
	etag: string | null;
	lastModified: string | null;
	/** A digest of the address that they belong to; for another one they are not sent. */
	of: string;
}

/** `unchanged` brings nothing: what was stored before still stands. */
export interface SourceAnswer {
	outcome: 'ok' | 'unchanged' | 'failed';
	/** Sorted, unique, inside physical bounds: ended hours for history, the running and coming ones else. */
	hours: WeatherHour[];
	/** Of daily sources, in the lake's own calendar; history ends with yesterday. */
	days: DayValues[];
	/** When the source says its forecast was made, else its Last-Modified, else now; never later. */
	issuedAt: Date | null;
	/** Whether the source itself says it. */
	isIssueTold: boolean;
	station: Station | null;
	/** False where snow is unknown by this source. */
	hasPrecipitation: boolean;
	/** What was wrong or is worth a look, in the order of weight, also where the outcome is ok. */
	faults: Fault[];
	validators: Validators | null;
	/** The source asks to be left alone until then (Expires, Cache-Control), else `null`. */
	freshUntilAt: Date | null;
	/** Of 429 and 503. */
	retryAfter_s: number | null;
	calls: number;
	/** Decompressed, of all calls. */
	bytes: number;
}

export interface Station {
	name: string | null;
	latitude: number | null;
	longitude: number | null;
	elevation_m: number | null;
}

export interface Fault {
	code: FaultCode;
	/** A sentence for the user, with what to do. Never holds a key. */
	text: string;
	count?: number;
	/** The first day or hour that it is about. */
	at?: string;
}

export const FAULT_CODES = [
	'notConfigured',
	'stopped',
	'timeOut',
	'unreachable',
	'refused',
	'keyRefused',
	'notFound',
	'tooMany',
	'serverFailed',
	'redirectedTooOften',
	'addressNotAllowed',
	'empty',
	'notJson',
	'truncated',
	'tooLarge',
	'nothingMapped',
	'nulls',
	'impossible',
	'unitDoubt',
	'clockDoubt',
	'clockChange',
	'repeated',
	'missing',
	'stuck',
	'stale',
	'badMapping',
	'deprecated'
] as const;
export type FaultCode = (typeof FAULT_CODES)[number];

export interface FetchSettings {
	/** `FROSTLEDGER_SOURCE_HOSTS`: names that may lie in a private network. */
	allowedHosts: readonly string[];
	/** Of one call, from the look-up of its name to the last byte. */
	timeOut_ms: number;
	/** Of one answer, decompressed. */
	maxBytes: number;
	maxRedirects: number;
}

/** What a try found, to be shown beside each other. */
export interface Trial {
	/** The first 64 kB of the answer, keys struck out. Text, never markup. */
	raw: string;
	isCut: boolean;
	/** Host and path that answered, without key and query. */
	answeredBy: string | null;
	status: number | null;
	contentType: string | null;
	suggestion: Suggestion | null;
	/** The mapping that was tried: the given one, else the suggested one. */
	mapping: Mapping | null;
	/** What was understood with it. */
	answer: SourceAnswer;
	/** Units, time zone and step in words. */
	words: string[];
}

export interface Suggestion {
	mapping: Mapping | null;
	/** Best first; a role may have several. */
	guesses: PathGuess[];
	/** Why nothing is suggested, or what to look at. */
	words: string[];
}

export interface PathGuess {
	role: 'time' | keyof Mapping['values'];
	path: string;
	unit: string | null;
	why: string;
	sample: string[];
}

export type SourcePart = 'history' | 'forecast';
