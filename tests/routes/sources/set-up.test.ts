import { expect, test } from 'vitest';
import { getLakeOrder } from '../../../src/lib/server/services/sources/lake-order.ts';
import { getSource } from '../../../src/lib/server/services/sources/sources.ts';
import * as change from '../../../src/routes/sources/[source]/addresses/[address]/+page.server.ts';
import * as anew from '../../../src/routes/sources/new/+page.server.ts';
import type { TryShown } from '../../../src/routes/sources/set-up/try-it.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	hoursFrom,
	inventedSource,
	useSource
} from '../../support/invented-source.ts';

const ADDRESS = 'https://weather.invalid/past?lat={latitude}&from={from}&to={to}';
const KEY = 'kingfisher-4711';

/** A context whose tries are answered with a suggestion that fits. */
async function page() {
	const { ctx: context } = await contextWithService('2027-01-20T12:20:00Z');
	const { id } = await inventedLake(context, { timeZone: 'Etc/UTC' });
	const keys: (string | null)[] = [];
	const [call] = inventedSource().calls;
	context.weather.trySource = async (tried, { key }) => {
		keys.push(key);
		const mapping = tried.mapping ?? call?.mapping ?? null;
		const air = Array.from({ length: 48 }, (_, at) => -8 + Math.sin(at));
		return {
			raw: '{"hourly": {}}',
			isCut: false,
			answeredBy: 'weather.invalid/past',
			status: 200,
			contentType: 'application/json',
			suggestion: { mapping, guesses: [], words: ['Suggested.'] },
			mapping,
			answer: answered({ hours: hoursFrom('2027-01-18T00:00:00Z', air) }),
			words: ['Hours, in UTC.', 'Suggested.']
		};
	};
	const run = (action: Parameters<typeof outcomeOf>[0], fields: object, params: object = {}) =>
		outcomeOf(action, formEvent({ context, params, fields } as never));
	const asked = { lake: id, address: ADDRESS, part: 'both', format: 'json' };
	return { context, lake: id, keys, run, asked };
}

const FACTS = {
	name: 'Ridge Station',
	attribution: 'Theirs',
	perDay: '100',
	minInterval_min: '10'
};

test('a try shows what came and fills in the places; storing lets the lake use it', async () => {
	const { context, lake, run, asked } = await page();
	const tried = await run(anew.actions['try'], asked);
	expect(tried.status).toBe(200);
	const shown = tried.data['tried'] as TryShown;
	expect(shown).toMatchObject({ isUnderstood: true, wasSuggested: true, status: 200 });
	// Each word once.
	expect(shown.words).toEqual(['Hours, in UTC.', 'Suggested.']);
	const values = tried.data.values ?? {};
	expect(values).toMatchObject({
		'map.air.path': '$.hourly.air',
		'map.air.unit': '°C',
		attribution: 'Weather data from weather.invalid'
	});
	const stored = await run(anew.actions['store'], { ...values, ...FACTS, use: 'yes' });
	expect(stored.location).toBe(`/lakes/${lake}/weather?stored=ridge-station`);
	expect(await getSource(context, 'ridge-station')).toMatchObject({
		source: { terms: { attribution: 'Theirs' }, calls: [{ address: ADDRESS, part: 'both' }] }
	});
	const order = await getLakeOrder(context, lake);
	expect(order.map((origin) => origin.kind)).toEqual(['csv', 'source']);
});

test('what is lacking is asked for, and what was typed stays', async () => {
	const { run, asked } = await page();
	const empty = await run(anew.actions['try'], { ...asked, address: '' });
	expect([empty.status, fieldsOf(empty)]).toEqual([400, ['address']]);
	const wrong = { ...asked, address: 'ftp://weather.invalid/{latitude}' };
	const refused = await run(anew.actions['try'], wrong);
	expect(fieldsOf(refused)).toEqual(['address']);
	expect(refused.data.values?.['address']).toBe(wrong.address);
	const untried = await run(anew.actions['store'], { ...asked, ...FACTS });
	expect(fieldsOf(untried)).toContain('map.air.path');
});

test('a key is held on the server from a try to the storing, and never goes back to the page', async () => {
	const { context, keys, run, asked } = await page();
	const address = `${ADDRESS}&key={key}`;
	const tried = await run(anew.actions['try'], { ...asked, address, key: KEY });
	expect(JSON.stringify(tried.data)).not.toContain(KEY);
	const values = tried.data.values ?? {};
	await run(anew.actions['try'], values);
	expect(keys).toEqual([KEY, KEY]);
	const elsewhere = address.replace('weather.invalid', 'elsewhere.invalid');
	await run(anew.actions['try'], { ...values, address: elsewhere });
	expect(keys.at(-1)).toBeNull();
	await run(anew.actions['store'], { ...values, ...FACTS });
	expect(await getSource(context, 'ridge-station')).toMatchObject({ hasKey: true });
	const without = await run(anew.actions['store'], { ...values, ...FACTS, held: '' });
	expect(fieldsOf(without)).toEqual(['key']);
});

test('an address of a stored source is tried and corrected, and one more is added', async () => {
	const { context, lake, run, asked } = await page();
	await useSource(context, lake);
	const params = { source: 'invented-weather', address: '0' };
	const tried = await run(change.actions['try'], asked, params);
	const values = { ...tried.data.values, 'map.air.unit': '°F' };
	const stored = await run(change.actions['store'], values, params);
	expect(stored.location).toBe('/sources/invented-weather?stored=address');
	const { source } = await getSource(context, 'invented-weather');
	expect(source?.calls[0]?.mapping.values.air?.unit).toBe('°F');
	const more = { ...params, address: 'new' };
	await run(change.actions['store'], { ...tried.data.values, part: 'forecast' }, more);
	expect((await getSource(context, 'invented-weather')).source?.calls).toHaveLength(3);
	const none = run(change.actions['try'], asked, { ...params, address: '7' });
	await expect(none).rejects.toMatchObject({ status: 404 });
});
