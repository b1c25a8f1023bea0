import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { createSite, deleteSite } from '../../../src/lib/server/services/sites.ts';
import { getTelling } from '../../../src/lib/server/services/telling/settings.ts';
import { actions, load } from '../../../src/routes/lakes/[lake]/telling/+page.server.ts';
import { fetchFeed } from '../../support/feed-calls.ts';
import { fieldsOf, formEvent, outcomeOf } from '../../support/form-event.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { answering, startReceiver, type Receiver } from '../../support/webhook-receiver.ts';

let receiver: Receiver;
beforeAll(async () => {
	receiver = await startReceiver();
});
afterAll(() => receiver.stop());

async function lake(changes: Partial<Context> = {}) {
	const context = { ...(await freshContext()), webhookHosts: ['127.0.0.1'], ...changes };
	const { id } = await inventedLake(context);
	return { context, params: { lake: id } };
}

const state = ({ context, params }: Awaited<ReturnType<typeof lake>>) =>
	getTelling(context, params.lake);

test('loads and the days after which a reading is due are chosen', async () => {
	const at = await lake();
	const fields = { 'load:car': 'yes', 'load:atv': 'yes', readingAfter_d: '10' };
	const outcome = await outcomeOf(actions['what'], formEvent({ ...at, fields }));
	expect(outcome.location).toBe('?done=what');
	expect(await state(at)).toMatchObject({ loads: ['atv', 'car'], readingAfter_d: 10 });
	const none = { readingAfter_d: '10' };
	await outcomeOf(actions['what'], formEvent({ ...at, fields: none }));
	expect((await state(at)).loads).toEqual([]);
});

test('sites are chosen where there are several, one at least', async () => {
	const at = await lake();
	await createSite(at.context, at.params.lake, { name: 'Narrow bay', kind: 'bay', parent: null });
	const what = (fields: Record<string, string>) =>
		outcomeOf(actions['what'], formEvent({ ...at, fields: { readingAfter_d: '7', ...fields } }));
	await what({ sites: 'asked', 'site:narrow-bay': 'yes' });
	expect((await state(at)).sites).toEqual(['narrow-bay']);
	const none = await what({ sites: 'asked' });
	expect([none.status, fieldsOf(none)]).toEqual([400, ['sites']]);
	// A form that did not ask changes none.
	await what({});
	expect((await state(at)).sites).toEqual(['narrow-bay']);
	await deleteSite(at.context, at.params.lake, 'narrow-bay');
	expect((await state(at)).sites).toEqual(['main']);
});

test.each([
	['nothing', ''],
	['a word', 'soon'],
	['two days', '2'],
	['sixty-one days', '61'],
	['half a day more', '7.5']
])('a reading due after %s is refused at its field and keeps what was typed', async (_, typed) => {
	const at = await lake();
	const fields = { 'load:car': 'yes', readingAfter_d: typed };
	const outcome = await outcomeOf(actions['what'], formEvent({ ...at, fields }));
	expect([outcome.status, fieldsOf(outcome)]).toEqual([400, ['readingAfter_d']]);
	expect(outcome.data.values).toEqual(fields);
	expect((await state(at)).readingAfter_d).toBe(7);
});

test.each(['calendar', 'changes'] as const)('%s is made, shown once and revoked', async (kind) => {
	const at = await lake();
	const fields = { kind };
	const made = await outcomeOf(actions['make'], formEvent({ ...at, fields }));
	const address = String(made.data['address']);
	expect(made.data['form']).toBe(kind);
	expect((await fetchFeed(at.context, new URL(address).pathname)).status).toBe(200);
	const page = JSON.stringify(await load(formEvent(at)));
	expect(page).not.toContain(address.split('/')[4]);
	const gone = await outcomeOf(actions['revoke'], formEvent({ ...at, fields }));
	expect(gone.location).toBe(`?done=${kind}`);
	expect((await fetchFeed(at.context, new URL(address).pathname)).status).toBe(404);
});

test('a feed of no such kind is refused', async () => {
	const at = await lake();
	const made = outcomeOf(actions['make'], formEvent({ ...at, fields: { kind: 'all' } }));
	await expect(made).rejects.toMatchObject({ status: 400 });
});

test('a webhook is set up, tried, given other kinds and removed', async () => {
	const at = await lake();
	const fields = { address: receiver.at(), 'kind:thawAhead': 'yes' };
	const made = await outcomeOf(actions['webhook'], formEvent({ ...at, fields }));
	expect(String(made.data['key'])).toMatch(/^[\w-]{43}$/);
	const tried = await outcomeOf(actions['test'], formEvent(at));
	expect(tried.data['posted']).toEqual({ isTaken: true, status: 204 });
	expect(receiver.received).toHaveLength(1);
	receiver.reply = answering(500);
	const failed = await outcomeOf(actions['test'], formEvent(at));
	expect(failed.data['posted']).toMatchObject({ isTaken: false });
	const kinds = { 'kind:floodAhead': 'yes', 'kind:wentThrough': 'yes' };
	await outcomeOf(actions['kinds'], formEvent({ ...at, fields: kinds }));
	expect((await state(at)).webhook?.kinds).toEqual(['floodAhead', 'wentThrough']);
	expect((await outcomeOf(actions['remove'], formEvent(at))).location).toBe('?done=removed');
	expect((await state(at)).webhook).toBeNull();
});

test.each([
	['no address', { address: '', 'kind:thawAhead': 'yes' }, 'address'],
	['a word', { address: 'ice', 'kind:thawAhead': 'yes' }, 'address'],
	['a private address', { address: 'http://192.168.1.1/', 'kind:thawAhead': 'yes' }, 'address'],
	['nothing to send', { address: 'https://hooks.example.org/' }, 'kinds']
])('a webhook with %s is refused at its field', async (_, fields, field) => {
	const at = await lake();
	const outcome = await outcomeOf(actions['webhook'], formEvent({ ...at, fields: { ...fields } }));
	expect([outcome.status, fieldsOf(outcome)]).toEqual([400, [field]]);
	expect(outcome.data.values).toEqual(fields);
	expect((await state(at)).webhook).toBeNull();
});

test('all that is wrong with a webhook, or with what is told, is said in one round', async () => {
	const at = await lake();
	const webhook = { address: 'ice' };
	const sent = await outcomeOf(actions['webhook'], formEvent({ ...at, fields: webhook }));
	expect(fieldsOf(sent)).toEqual(['kinds', 'address']);
	const what = { sites: 'asked', readingAfter_d: '2' };
	const told = await outcomeOf(actions['what'], formEvent({ ...at, fields: what }));
	expect(fieldsOf(told)).toEqual(['sites', 'readingAfter_d']);
});

test('the page of a lake that is not there is not found', async () => {
	const context = await freshContext();
	const page = load(formEvent({ context, params: { lake: 'nowhere' } }));
	await expect(page).rejects.toMatchObject({ status: 404 });
});
