import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import {
	ARCHIVE_LIMITS,
	isPlainPath,
	packWinters,
	unpackWinters
} from '#lib/server/services/tidy/archive.ts';
import type { TidyFiles } from '#lib/server/services/tidy/folder.ts';
import { Refusal } from './run.ts';

/** Writes into a folder that is new or empty, or a zip file that is new. @throws Refusal */
export function writeWinters(path: string, files: TidyFiles, at: Date): void {
	if (path.endsWith('.zip')) {
		if (existsSync(path)) throw new Refusal(`${path} exists already; name another file`);
		writeFileSync(path, packWinters(files, at));
		return;
	}
	if (existsSync(path) && (!statSync(path).isDirectory() || readdirSync(path).length > 0)) {
		throw new Refusal(`${path} is there and not an empty folder; name another`);
	}
	for (const [name, text] of files) {
		mkdirSync(dirname(join(path, name)), { recursive: true });
		writeFileSync(join(path, name), text);
	}
}

/** The texts of a folder or a zip file. @throws Refusal */
export function readWintersAt(path: string): TidyFiles {
	if (!existsSync(path)) throw new Refusal(`there is no folder or file ${path}`);
	if (statSync(path).isDirectory()) return readFolder(path);
	if (statSync(path).size > ARCHIVE_LIMITS.zip_B) {
		throw new Refusal(`${path} has more than ${ARCHIVE_LIMITS.zip_B / 1e6} MB`);
	}
	const { files, problem } = unpackWinters(readFileSync(path));
	if (problem !== null) throw new Refusal(problem);
	return files;
}

function readFolder(path: string): TidyFiles {
	if (!existsSync(join(path, 'lakes.csv'))) throw new Refusal(`${path} has no lakes.csv`);
	const files = new Map<string, string>();
	for (const entry of readdirSync(path, { withFileTypes: true, recursive: true })) {
		// Links are not followed: they may lead anywhere.
		if (!entry.isFile() || !entry.name.endsWith('.csv')) continue;
		const file = join(entry.parentPath, entry.name);
		const name = relative(path, file).replaceAll('\\', '/');
		if (!isPlainPath(name)) continue;
		if (statSync(file).size > ARCHIVE_LIMITS.file_B || files.size >= ARCHIVE_LIMITS.entries) {
			throw new Refusal(`${name} is too large, or there are too many files in ${path}`);
		}
		files.set(name, readFileSync(file, 'utf8'));
	}
	return files;
}
