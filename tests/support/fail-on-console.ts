import { afterEach, beforeEach, expect, vi } from 'vitest';

const METHODS = ['log', 'info', 'warn', 'error'] as const;
let printed: string[] = [];

/** What a test prints is either an accident or a message nobody asserts: both fail it. */
beforeEach(() => {
	printed = [];
	for (const method of METHODS) {
		vi.spyOn(console, method).mockImplementation((...words: unknown[]) => {
			printed.push(`${method}: ${words.map(String).join(' ')}`);
		});
	}
});

afterEach(() => {
	for (const method of METHODS) vi.mocked(console[method]).mockRestore?.();
	expect(printed, 'printed on the console').toEqual([]);
});
