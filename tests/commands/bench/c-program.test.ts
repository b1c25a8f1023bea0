import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { withCProgram } from '../../../src/commands/bench/c-program.ts';

describe.runIf(spawnSync('cc', ['--version']).status === 0)('where there is a C compiler', () => {
	test('a program that stops with an error is a failure that says so', () => {
		const { status } = withCProgram('time-season.c', (program) => ({
			status: 'ran' as const,
			printed: program('not a number')
		}));
		expect(status).toBe('failed');
	});

	test('a source that does not compile is a failure with the words of the compiler', () => {
		const none = withCProgram('no-such-file.c', () => ({ status: 'ran' as const }));
		expect(none).toMatchObject({ status: 'failed', message: expect.stringContaining('no-such') });
	});
});
