import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import {
	closeContext,
	getContext,
	openContext,
	startContext
} from '../../src/lib/server/context.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { inventedLake } from '../support/fresh-context.ts';

test('the context is there from the start of the server to its end', async () => {
	expect(getContext).toThrow('before the server opened its database');
	const context = await startContext({ FROSTLEDGER_DATA: ':memory:' });
	expect(getContext()).toBe(context);
	expect(await startContext({ FROSTLEDGER_DATA: ':memory:' })).toBe(context);
	await closeContext(context);
	expect(getContext).toThrow('before the server opened its database');
});

test('FROSTLEDGER_DATA names the folder of the database', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-context-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	const first = await openContext({ FROSTLEDGER_DATA: join(folder, 'winter') });
	await inventedLake(first);
	await closeContext(first);
	expect(existsSync(join(folder, 'winter', 'frostledger.db'))).toBe(true);
	const second = await openContext({ FROSTLEDGER_DATA: join(folder, 'winter') });
	onTestFinished(() => closeContext(second));
	expect(await listLakes(second)).toHaveLength(1);
});
