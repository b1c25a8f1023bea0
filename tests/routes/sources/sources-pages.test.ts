import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { getSource, listSources } from '../../../src/lib/server/services/sources/sources.ts';
import { SHOWN } from '../../../src/lib/ui/forms/merge-shown.ts';
import { callValues } from '../../../src/routes/sources/set-up/call-values.ts';
import { factValues } from '../../../src/routes/sources/set-up/read-source.ts';
import * as list from '../../../src/routes/sources/+page.server.ts';
import SourcesPage from '../../../src/routes/sources/+page.svelte';
import * as one from '../../../src/routes/sources/[source]/+page.server.ts';
import SourcePage from '../../../src/routes/sources/[source]/+page.svelte';
import * as address from '../../../src/routes/sources/[source]/addresses/[address]/+page.server.ts';
import * as log from '../../../src/routes/sources/log/+page.server.ts';
import LogPage from '../../../src/routes/sources/log/+page.svelte';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	inventedSource,
	useSource
} from '../../support/invented-source.ts';

const ID = 'invented-weather';
const KEY = 'kingfisher-4711';
const UNITS = { measure: 'metric', mass: 'kg' };

async function sources({ isFailing = false } = {}) {
	const { ctx: context, service } = await contextWithService('2027-01-20T12:20:00Z');
	const { id } = await inventedLake(context, { timeZone: 'Etc/UTC' });
	if (isFailing) {
		const faults = [{ code: 'serverFailed' as const, text: 'It <b>failed</b>. Wait.' }];
		service.answer = () => answered({ outcome: 'failed', faults });
	}
	await useSource(context, id);
	const at = (more: object = {}) => formEvent({ context, params: { source: ID }, ...more });
	const run = (action: Parameters<typeof outcomeOf>[0], more: object = {}) =>
		outcomeOf(action, at(more));
	return { context, service, lake: id, at, run };
}

/** What a page shows of what its load function gives. */
async function html(
	Page: unknown,
	{ load }: { load: (event: never) => unknown },
	event: never
): Promise<string> {
	const data = { units: UNITS, ...((await load(event)) as object) };
	const { body } = render(Page as never, { props: { data, form: null } as never });
	return body.replaceAll(/<!--.*?-->/g, '').replaceAll(/\s+/g, ' ');
}

test('the list tells how each source does, asks it, and offers what is ready-made', async () => {
	const { context, service, at, run } = await sources();
	expect(await html(SourcesPage, list as never, at())).toContain('Not asked yet.');
	const { status, location } = await run(list.actions['refresh'], { fields: { id: ID } });
	expect([status, location]).toEqual([303, `/sources#${ID}`]);
	await whenIdle(context);
	expect(service.asks.length).toBeGreaterThan(1);
	const shown = await html(SourcesPage, list as never, at());
	expect(shown).toContain('Answered just now; forecast issued just now.');
	expect(shown).toMatch(/2 of 1,000 calls used today/);
	expect(shown).toContain('Set it up');
});

test('a source that fails stands out with what is wrong, as text', async () => {
	const { context, lake, at, run } = await sources({ isFailing: true });
	await run(list.actions['refresh'], { fields: { id: ID } });
	await whenIdle(context);
	const shown = await html(SourcesPage, list as never, at());
	expect(shown).toMatch(/Needs a look\..*Fails since 12:20 UTC.*It never answered yet/);
	const told = await html(LogPage, log as never, at({ query: `lake=${lake}&faults=only` }));
	expect(told).toContain('It &lt;b>failed&lt;/b>. Wait.');
	expect(told).toContain('Failed');
	const none = await html(LogPage, log as never, at({ query: 'source=nobody' }));
	expect(none).not.toContain('Test Lake</a>');
});

test('a source is deleted, and brought back by the undo on the page', async () => {
	const { context, at, run } = await sources();
	const deleted = await run(list.actions['delete'], { fields: { id: ID } });
	expect(deleted.location).toBe(`/sources?deleted=${ID}`);
	expect(await listSources(context)).toEqual([]);
	const shown = await html(SourcesPage, list as never, at({ query: `deleted=${ID}` }));
	expect(shown).toMatch(/action="\/sources\?\/restore".*Undo/);
	const restored = await run(list.actions['restore'], { fields: { id: ID } });
	expect(restored.location).toBe(`/sources?stored=${ID}`);
	expect(await getSource(context, ID)).toMatchObject({ name: 'Invented Weather' });
});

test('a source from somebody else is taken in, or refused with what is wrong where', async () => {
	const { context, run } = await sources();
	const text = JSON.stringify(inventedSource({ id: 'passed-on', name: 'Passed On' }));
	expect((await run(list.actions['import'], { fields: { text } })).location).toBe(
		'/sources?stored=passed-on'
	);
	expect((await listSources(context)).map(({ name }) => name)).toContain('Passed On');
	const wrong = JSON.stringify({ ...inventedSource(), limits: { perDay: -1 } });
	for (const [typed, words] of [
		[wrong, /limits\.perDay/],
		['{', /not JSON as a whole/],
		['', /Choose a file/]
	] as const) {
		const refused = await run(list.actions['import'], { fields: { text: typed } });
		expect(refused.status).toBe(400);
		expect(refused.data.issues?.map(({ message }) => message).join()).toMatch(words);
		expect(refused.data.values?.['text']).toBe(typed);
	}
	const keyed = JSON.stringify(inventedSource({ id: 'keyed', needsKey: true }));
	const wanting = await run(list.actions['import'], { fields: { text: keyed } });
	expect(wanting.location).toBe('/sources/keyed?stored=import');
});

test('a key is stored and forgotten on the page of its source, and never stands in it', async () => {
	const { context, at, run } = await sources();
	expect(fieldsOf(await run(one.actions['key'], { fields: { key: ' ' } }))).toEqual(['key']);
	for (const slip of ['\u0000"0x10', 'a\u0007b', 'x'.repeat(4001)]) {
		const refused = await run(one.actions['key'], { fields: { key: slip } });
		expect(fieldsOf(refused)).toEqual(['key']);
		expect(refused.data.values).toEqual({});
	}
	const stored = await run(one.actions['key'], { fields: { key: KEY } });
	expect(stored.location).toBe('?stored=key');
	expect(await getSource(context, ID)).toMatchObject({ hasKey: true });
	expect(await html(SourcePage, one as never, at())).not.toContain(KEY);
	expect((await run(one.actions['forgetKey'])).location).toBe('?stored=forgotten');
	expect(await getSource(context, ID)).toMatchObject({ hasKey: false });
});

test('facts, the switch and the addresses of a source are changed on its page', async () => {
	const { context, at, run } = await sources();
	const facts = { name: 'Renamed', attribution: 'Theirs', perDay: '20', minInterval_min: '5' };
	expect((await run(one.actions['facts'], { fields: facts })).location).toBe('?stored=facts');
	const { source } = await getSource(context, ID);
	expect(source).toMatchObject({ name: 'Renamed', limits: { perDay: 20, minInterval_min: 5 } });
	const refused = await run(one.actions['facts'], { fields: { ...facts, name: '' } });
	expect(fieldsOf(refused)).toEqual(['name']);
	expect((await run(one.actions['switch'], { fields: { on: 'no' } })).location).toBe('?stored=off');
	const shown = await html(SourcePage, one as never, at());
	expect(shown).toContain('Switched off: it is not asked, and what it brought stays.');
	expect(shown).toContain('https://weather.invalid/past');
	await run(one.actions['removeAddress'], { fields: { at: '0' } });
	const last = await run(one.actions['removeAddress'], { fields: { at: '0' } });
	expect(last.location).toBe('?stored=last');
	expect((await getSource(context, ID)).source?.calls).toHaveLength(1);
	await expect(run(one.actions['switch'], { params: { source: 'nobody' } })).rejects.toMatchObject({
		status: 404
	});
});

test('two people who change one source lose nothing of each other', async () => {
	const { context, run } = await sources();
	const read = async () => {
		const { source } = await getSource(context, ID);
		if (!source) throw new Error('no source');
		return source;
	};
	const values = factValues(await read());
	const send = (change: object) =>
		run(one.actions['facts'], {
			fields: { ...values, ...change, [SHOWN]: JSON.stringify({ values }) }
		});
	await send({ perDay: '20' });
	await send({ attribution: 'Theirs' });
	expect(await read()).toMatchObject({ limits: { perDay: 20 }, terms: { attribution: 'Theirs' } });

	// Both have seen two addresses, and both remove the first.
	const [past, ahead] = (await read()).calls;
	const removeFirst = () =>
		run(one.actions['removeAddress'], { fields: { at: '0', was: past?.address ?? '' } });
	expect((await removeFirst()).location).toBe('?stored=removed');
	expect((await removeFirst()).location).toBe('?stored=moved');
	expect((await read()).calls).toEqual([ahead]);
});

test('an address that another has changed is not written over unasked', async () => {
	const { context, run } = await sources();
	const read = async () => (await getSource(context, ID)).source?.calls[0];
	const call = await read();
	if (!call) throw new Error('no address');
	const values = callValues(call);
	const send = (change: object) =>
		run(address.actions['store'], {
			params: { source: ID, address: '0' },
			fields: { ...values, ...change, [SHOWN]: JSON.stringify({ values }) }
		});
	expect((await send({ 'map.air.scale': '0.1' })).status).toBe(303);
	const asked = await send({ chunk_d: '7' });
	expect(fieldsOf(asked)).toEqual(['address']);
	expect(asked.data.values).toMatchObject({ chunk_d: '7' });
	expect(await read()).toMatchObject({ chunk_d: 31, mapping: { values: { air: { scale: 0.1 } } } });
	await send({ chunk_d: '7', 'keep.address': call.address });
	expect(await read()).toMatchObject({ chunk_d: 7 });
});
