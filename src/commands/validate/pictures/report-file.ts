import { accessSync, constants, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** The report cannot be written there; the message says why. */
export class UnwritableReport extends Error {
	override name = 'UnwritableReport';
}

/** Asks before a minute is spent on the scores. */
export function requireWritable(file: string): void {
	attempt(file, () => {
		accessSync(dirname(file), constants.W_OK);
		const there = statSync(file, { throwIfNoEntry: false });
		if (there?.isDirectory()) throw new Error('it is a folder; name a file in it');
		if (there) accessSync(file, constants.W_OK);
	});
}

export function writeReport(file: string, page: string): void {
	attempt(file, () => writeFileSync(file, page));
}

function attempt(file: string, act: () => void): void {
	try {
		act();
	} catch (cause) {
		const why = cause instanceof Error ? cause.message : String(cause);
		throw new UnwritableReport(`the report cannot be written to ${file}: ${why}`, { cause });
	}
}
