import { resolve } from 'node:path';
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { keptAt, type Kept } from '#lib/server/context.ts';
import { troubleOf } from '#lib/server/services/storage-trouble.ts';

/** A command that was called wrongly, or cannot do what it was asked; told in one line. */
export class Refusal extends Error {
	override name = 'Refusal';
}

/** Runs a command: what it returns is printed, what it refuses is told in a line, with exit code 2. */
export async function run(name: string, work: () => Promise<string>): Promise<void> {
	try {
		process.stdout.write(`${await work()}\n`);
	} catch (cause) {
		const sentence = cause instanceof Refusal ? cause.message : troubleOf(cause);
		if (sentence === null) throw cause;
		process.stderr.write(`${name}: ${sentence}\n`);
		process.exitCode = 2;
	}
}

/** The words and flags of a call. @throws Refusal with the usage */
export function readWords(usage: string, options: NonNullable<ParseArgsConfig['options']>) {
	try {
		const { positionals, values } = parseArgs({ allowPositionals: true, options });
		return { words: positionals, has: (flag: string) => values[flag] === true };
	} catch (cause) {
		if (!(cause instanceof TypeError)) throw cause;
		throw new Refusal(`${cause.message}; ${usage}`, { cause });
	}
}

/** npm changes into the project first; paths are meant from where it was called. */
export function pathFrom(word: string): string {
	return resolve(process.env.INIT_CWD ?? process.cwd(), word);
}

/** @throws Refusal when everything is in memory only; on a server, when no folder is named */
export function requireKept(): Kept {
	const kept = keptAt(process.env);
	if (kept) return kept;
	throw new Refusal('FROSTLEDGER_DATA is “:memory:”; name the folder that the database lies in');
}
