import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Why there is nothing to compare with. */
export type NoProgram = { status: 'noCompiler' } | { status: 'failed'; message: string };

/** Gives a text to the program and returns what it prints. */
export type CProgram = (input: string) => string;

class CProgramFailed extends Error {
	override readonly name = 'CProgramFailed';
}

/** Compiles a file of the folder `c` with `cc -O3` in a folder of its own, uses it, cleans up. */
export function withCProgram<T>(file: string, use: (program: CProgram) => T): T | NoProgram {
	const folder = mkdtempSync(join(tmpdir(), 'bench-c-'));
	try {
		const source = fileURLToPath(new URL(`c/${file}`, import.meta.url));
		const program = join(folder, 'program');
		const compiled = spawnSync('cc', ['-O3', '-o', program, source, '-lm'], { encoding: 'utf8' });
		if (compiled.error) return { status: 'noCompiler' };
		if (compiled.status !== 0) return { status: 'failed', message: compiled.stderr };
		return use((input) => run(program, file, input));
	} catch (error) {
		if (error instanceof CProgramFailed) return { status: 'failed', message: error.message };
		throw error;
	} finally {
		rmSync(folder, { recursive: true });
	}
}

function run(program: string, file: string, input: string): string {
	const { status, signal, stdout } = spawnSync(program, {
		input,
		encoding: 'utf8',
		maxBuffer: 2 ** 26
	});
	if (status !== 0) throw new CProgramFailed(`${file} exited with ${status ?? signal}`);
	return stdout;
}
