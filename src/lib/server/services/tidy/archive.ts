import { strFromU8, strToU8, unzipSync, zipSync, type UnzipFileInfo, type Zippable } from 'fflate';
import { LAKES_FILE, type TidyFiles } from './folder.ts';

/** What an upload may hold. Sixty winters of a lake have about 1.5 MB. */
export const ARCHIVE_LIMITS = {
	zip_B: 16_000_000,
	entries: 500,
	file_B: 8_000_000,
	all_B: 40_000_000
} as const;

/** A tidy winters folder as a zip file. */
export function packWinters(files: TidyFiles, at: Date): Uint8Array<ArrayBuffer> {
	const entries: Zippable = {};
	for (const [path, text] of files) entries[path] = [strToU8(text), { mtime: at }];
	return new Uint8Array(zipSync(entries, { level: 6 }));
}

export type Unpacked = { files: TidyFiles; problem: null } | { files: null; problem: string };

/**
 * The texts in a zip file; a folder that all of them are in is taken off their paths. Nothing is
 * unpacked unless every entry is of a good name and what they unpack to, by the zip's own account,
 * which bounds the unpacking, stays within the limits.
 */
export function unpackWinters(bytes: Uint8Array): Unpacked {
	if (bytes.byteLength > ARCHIVE_LIMITS.zip_B) {
		return refused(`has more than ${ARCHIVE_LIMITS.zip_B / 1e6} MB`);
	}
	const inspection = new Inspection(bytes.byteLength);
	try {
		const entries = unzipSync(bytes, { filter: (entry) => inspection.takes(entry) });
		if (inspection.problem !== null) return refused(inspection.problem);
		return rooted(new Map(Object.entries(entries).map(([path, data]) => [path, decoded(data)])));
	} catch (cause) {
		return refused(`cannot be unpacked: ${cause instanceof Error ? cause.message : String(cause)}`);
	}
}

/** Looks at each entry before anything of it is unpacked. */
class Inspection {
	problem: string | null = null;
	readonly #seen = new Set<string>();
	readonly #zip_B: number;
	#packed_B = 0;
	#all_B = 0;

	constructor(zip_B: number) {
		this.#zip_B = zip_B;
	}

	takes({ name, size, originalSize, compression }: UnzipFileInfo): boolean {
		this.#packed_B += size;
		this.problem ??= this.#whyNot(name, originalSize, compression);
		this.#seen.add(name);
		return this.problem === null && /\.csv$/i.test(name);
	}

	#whyNot(name: string, size_B: number, compression: number): string | null {
		this.#all_B += size_B;
		if (this.#seen.size >= ARCHIVE_LIMITS.entries) {
			return `has more than ${ARCHIVE_LIMITS.entries} entries`;
		}
		if (this.#seen.has(name)) return `has ${quoted(name)} twice`;
		if (!isPlainPath(name)) return `has an entry ${quoted(name)}, which leads out of the folder`;
		if (compression !== 0 && compression !== 8) {
			return `has ${quoted(name)} packed in a way that is not known`;
		}
		// One piece of the file may not serve for many entries.
		if (this.#packed_B > this.#zip_B) return 'has entries that overlap';
		if (size_B > ARCHIVE_LIMITS.file_B) {
			return `unpacks ${quoted(name)} to more than ${ARCHIVE_LIMITS.file_B / 1e6} MB`;
		}
		return this.#all_B > ARCHIVE_LIMITS.all_B
			? `unpacks to more than ${ARCHIVE_LIMITS.all_B / 1e6} MB`
			: null;
	}
}

/** A path that stays within its folder on every system. */
export function isPlainPath(path: string): boolean {
	const steps = path.replace(/\/$/, '').split('/');
	return (
		path.length <= 250 &&
		!/[\\:\p{Cc}]/u.test(path) &&
		steps.every((step) => step !== '' && step !== '.' && step !== '..' && step !== '__proto__')
	);
}

function rooted(files: TidyFiles): Unpacked {
	const found = [...files.keys()].filter((path) => /(^|\/)lakes\.csv$/.test(path));
	const [path, ...more] = found;
	if (path === undefined) return refused(`has no ${LAKES_FILE}`);
	if (more.length > 0) return refused(`has more than one ${LAKES_FILE}`);
	const root = path.slice(0, -LAKES_FILE.length);
	const inside = [...files].filter(([each]) => each.startsWith(root));
	return {
		files: new Map(inside.map(([each, text]) => [each.slice(root.length), text])),
		problem: null
	};
}

/** UTF-8, or else what spreadsheets of the west write. */
function decoded(data: Uint8Array): string {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(data);
	} catch {
		return strFromU8(data, true);
	}
}

function quoted(name: string): string {
	return `“${name.slice(0, 80).replace(/\p{Cc}/gu, '?')}”`;
}

function refused(problem: string): Unpacked {
	return { files: null, problem: `The zip file ${problem}` };
}
