import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { z } from 'zod';
import { plainText } from './plain-text.ts';

/** A season of anybody's waypoints has some kB. */
export const LARGEST_GPX_BYTES = 1_000_000;
export const MOST_GPX_POINTS = 1000;

export interface GpxPoint {
	name: string | null;
	/** What the file calls its kind. */
	type: string | null;
	remark: string | null;
	latitude: number;
	longitude: number;
}

export interface GpxFile {
	name: string | null;
	waypoints: GpxPoint[];
	routes: { name: string | null; points: GpxPoint[] }[];
	/** Recorded tracks, which are not taken in. */
	tracks: number;
}

export type ParsedGpx = { status: 'read'; file: GpxFile } | { status: 'refused'; reason: string };

/**
 * Reads a GPX file: waypoints and routes of GPX 1.1, the open exchange format (and 1.0, which has the same).
 *
 * A file with a document type or entities of its own is refused: nothing in GPX needs them, and they can
 * be made to swell or to fetch. Names become single lines of plain text.
 */
export function parseGpx(bytes: Uint8Array): ParsedGpx {
	if (bytes.byteLength === 0) return refused('The file is empty.');
	if (bytes.byteLength > LARGEST_GPX_BYTES)
		return refused('The file has more than 1 MB. Send one with fewer points, without tracks.');
	const text = decode(bytes);
	if (text === null)
		return refused('The file is not UTF-8 or UTF-16 text. Is it a GPX file? Export it anew.');
	if (/<!(?:DOCTYPE|ENTITY)/i.test(text))
		return refused(
			'The file has a document type of its own (<!DOCTYPE …>). GPX needs none: remove it.'
		);
	return readText(text);
}

function readText(text: string): ParsedGpx {
	const valid = validate(text);
	if (valid !== null) return refused(valid);
	const { tree, fault } = treeOf(text);
	if (fault !== null) return refused(fault);
	if (typeof tree !== 'object' || tree === null || !('gpx' in tree))
		return refused('The file has no <gpx> element. Is it a GPX file?');
	const parsed = document.safeParse(tree);
	if (!parsed.success) return refused(faultOf(parsed.error));
	const { gpx } = parsed.data;
	const points = gpx.wpt.length + gpx.rte.reduce((sum, { rtept }) => sum + rtept.length, 0);
	if (points > MOST_GPX_POINTS)
		return refused(
			`The file has ${points} points; ${MOST_GPX_POINTS} at most are taken in at once.`
		);
	return {
		status: 'read',
		file: {
			name: gpx.metadata.name,
			waypoints: gpx.wpt,
			routes: gpx.rte.map(({ name, rtept }) => ({ name, points: rtept })),
			tracks: gpx.trk.length
		}
	};
}

/** The parser throws at what is too deep or has names of its own making. */
function treeOf(text: string): { tree: unknown; fault: string | null } {
	try {
		return { tree: parser.parse(text), fault: null };
	} catch (cause) {
		const why = cause instanceof Error ? cause.message : String(cause);
		return { tree: null, fault: `The file cannot be read as GPX: ${plainText(why, 200)}.` };
	}
}

const parser = new XMLParser({
	ignoreAttributes: false,
	attributeNamePrefix: '@',
	removeNSPrefix: true,
	parseTagValue: false,
	parseAttributeValue: false,
	ignoreDeclaration: true,
	ignorePiTags: true,
	maxNestedTags: 30,
	isArray: (name) => ['wpt', 'rte', 'rtept', 'trk'].includes(name)
});

const LONGEST_NAME = 120;
const LONGEST_REMARK = 2000;

const line = (longest: number) =>
	z
		.unknown()
		.optional()
		.transform((text) => plainText(text, longest));

/** A coordinate as the schema of GPX has it: an xsd:decimal. */
const degrees = (most: number, name: string) =>
	z
		.string(`has no ${name}`)
		.regex(/^\s*[+-]?(?:\d+\.?\d*|\.\d+)\s*$/, `has a ${name} that is not a decimal number`)
		.transform(Number)
		.refine((value) => Math.abs(value) <= most, `has a ${name} outside ${-most} to ${most}`);

const point = z
	.object(
		{
			'@lat': degrees(90, 'lat'),
			'@lon': degrees(180, 'lon'),
			name: line(LONGEST_NAME),
			cmt: line(LONGEST_REMARK),
			desc: line(LONGEST_REMARK),
			type: line(LONGEST_NAME)
		},
		'has no position'
	)
	.transform(({ '@lat': latitude, '@lon': longitude, name, cmt, desc, type }): GpxPoint => ({
		name,
		type,
		remark: desc ?? cmt,
		latitude,
		longitude
	}));

const list = <Item extends z.ZodType>(item: Item) => z.array(item).default([]);
/** An element without content comes as empty text. */
const emptyAs = <Item extends z.ZodType>(item: Item) =>
	z.preprocess((value) => (typeof value === 'string' || value === undefined ? {} : value), item);

const document = z.object({
	gpx: emptyAs(
		z.object({
			'@version': z
				.enum(['1.0', '1.1'], 'is not GPX 1.0 or 1.1; export it as GPX 1.1')
				.default('1.1'),
			metadata: emptyAs(z.object({ name: line(LONGEST_NAME) })),
			wpt: list(point),
			rte: list(emptyAs(z.object({ name: line(LONGEST_NAME), rtept: list(point) }))),
			trk: z.array(z.unknown()).default([])
		})
	)
});

/** Says where, in the file's own words. */
function faultOf({ issues }: z.ZodError): string {
	const [first] = issues;
	const path = (first?.path ?? []).map((part) => (typeof part === 'number' ? `${part + 1}` : part));
	const elements = path.filter((part) => part !== 'gpx' && !String(part).startsWith('@'));
	const where = elements.length === 0 ? 'The file' : `In the file ${elements.join(' ')}`;
	return `${where} ${first?.message ?? 'cannot be read'}.`;
}

function validate(text: string): string | null {
	const valid = XMLValidator.validate(text, { allowBooleanAttributes: false });
	if (valid === true) return null;
	const { line: at, msg } = valid.err;
	return `The file is not well-formed XML: line ${at}, ${plainText(msg, 200)}`;
}

function decode(bytes: Uint8Array): string | null {
	const [first, second] = bytes;
	const isBig = first === 0xfe && second === 0xff;
	const isLittle = first === 0xff && second === 0xfe;
	const encoding = isBig ? 'utf-16be' : isLittle ? 'utf-16le' : 'utf-8';
	try {
		return new TextDecoder(encoding, { fatal: true }).decode(bytes);
	} catch {
		return null;
	}
}

function refused(reason: string): ParsedGpx {
	return { status: 'refused', reason };
}
