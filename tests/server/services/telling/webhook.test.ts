import { createHmac } from 'node:crypto';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import type { MessageKind } from '../../../../src/lib/model/telling/message.ts';
import { getLake } from '../../../../src/lib/server/services/lakes.ts';
import { lookAt } from '../../../../src/lib/server/services/telling/look.ts';
import { getTelling } from '../../../../src/lib/server/services/telling/settings.ts';
import { toRow } from '../../../../src/lib/server/services/telling/to-row.ts';
import type { WebhookBody } from '../../../../src/lib/server/services/telling/webhook/body.ts';
import {
	deliverDue,
	GIVE_UP_AFTER,
	wait_min
} from '../../../../src/lib/server/services/telling/webhook/deliver.ts';
import { enqueueMessages } from '../../../../src/lib/server/services/telling/webhook/enqueue.ts';
import { postWebhook } from '../../../../src/lib/server/services/telling/webhook/post.ts';
import {
	removeWebhook,
	resumeWebhook,
	setWebhook,
	testWebhook,
	webhookInput
} from '../../../../src/lib/server/services/telling/webhook/webhook.ts';
import { deleteReading } from '../../../../src/lib/server/services/readings.ts';
import { permissionsIn } from '../../../support/permission-words.ts';
import { logReading, tellingLake } from '../../../support/telling-lake.ts';
import { answering, startReceiver, type Receiver } from '../../../support/webhook-receiver.ts';
import { updateReading } from '../../../support/update-reading.ts';

let receiver: Receiver;
beforeAll(async () => {
	receiver = await startReceiver();
});
afterEach(() => {
	receiver.received.length = 0;
	receiver.reply = answering(204);
});
afterAll(() => receiver.stop());

const NO_HOLE = {
	total_m: null,
	clear_m: null,
	white_m: null,
	snow_m: null,
	slush_m: null,
	freeboard_m: null
};

/** A lake with a webhook that wants to hear of readings, and the machine's own address allowed. */
async function hooked(changes: Partial<Context> = {}) {
	const lake = await tellingLake();
	const ctx: Context = { ...lake.ctx, webhookHosts: ['127.0.0.1'], ...changes };
	const input = webhookInput.parse({
		address: receiver.at(),
		kinds: ['readingLogged', 'wentThrough']
	});
	const { key } = await setWebhook(ctx, lake.id, input);
	await lookAt(ctx, lake.id);
	let hour = 2;
	const tell = async (change: Record<string, unknown> = {}) => {
		lake.setNow(`2027-01-29T${String(hour++).padStart(2, '0')}:00:00Z`);
		const reading = await logReading({ ...lake, ctx }, change);
		await lookAt(ctx, lake.id);
		return reading;
	};
	const state = async () => (await getTelling(ctx, lake.id)).webhook;
	return { ...lake, ctx, key, tell, state };
}

const bodies = () => receiver.received.map(({ body }) => JSON.parse(body) as WebhookBody);

test('a message is posted as JSON, signed over its bytes, and waits no more', async () => {
	const { ctx, key, tell, state } = await hooked();
	await tell({ place: 'north bay ❄' });
	expect((await state())?.waiting).toBe(1);
	expect(await deliverDue(ctx)).toBe(1);
	const [sent] = receiver.received;
	expect(sent).toMatchObject({ method: 'POST', url: '/ice?room=7' });
	expect(sent?.headers['content-type']).toBe('application/json');
	// RFC 2104, by Node's own OpenSSL over the bytes that came.
	const signature = createHmac('sha256', key)
		.update(Buffer.from(sent?.body ?? ''))
		.digest('hex');
	expect(sent?.headers['frostledger-hmac-sha256']).toBe(signature);
	const [body] = bodies();
	expect(sent?.headers['frostledger-id']).toBe(body?.id);
	expect(body).toMatchObject({
		kind: 'readingLogged',
		madeAt: '2027-01-29T02:00:00.000Z',
		lake: { id: 'test-lake', name: 'Test Lake' },
		on: '2027-01-28'
	});
	expect(body?.text).toMatch(/A drilled hole decides\.$/);
	expect(permissionsIn(`${body?.title} ${body?.text}`)).toEqual([]);
	expect(body).not.toHaveProperty('link');
	expect(await state()).toMatchObject({ waiting: 0, failures: 0, trouble: null });
	expect(await deliverDue(ctx)).toBe(0);
});

test('a link is there where the app knows its own address', async () => {
	const { ctx, tell } = await hooked({ address: 'https://ice.example.org' });
	await tell();
	await deliverDue(ctx);
	expect(bodies()[0]?.link).toBe('https://ice.example.org/lakes/test-lake');
});

test('what is not asked for is not sent', async () => {
	const { ctx, id, tell } = await hooked();
	await setWebhook(ctx, id, webhookInput.parse({ address: receiver.at(), kinds: ['wentThrough'] }));
	await tell();
	await tell({ kind: 'wentThrough', holes: [] });
	await deliverDue(ctx);
	expect(bodies().map(({ kind }) => kind)).toEqual(['wentThrough']);
});

test('a reading that is put right or deleted after it was sent is told anew, and with its own id', async () => {
	const { ctx, id, tell } = await hooked();
	const reading = await tell({ holes: [{ total_m: 1 }] });
	await deliverDue(ctx);
	await updateReading(ctx, id, reading, { holes: [{ ...NO_HOLE, total_m: 0.1 }] });
	await lookAt(ctx, id);
	await deliverDue(ctx);
	await updateReading(ctx, id, reading, { kind: 'wentThrough', holes: [] });
	await lookAt(ctx, id);
	await deliverDue(ctx);
	await deleteReading(ctx, id, reading);
	await lookAt(ctx, id);
	await deliverDue(ctx);
	expect(bodies().map(({ kind, title }) => [kind, title.split(':')[0], title])).toEqual([
		['readingLogged', 'Reading of 28 Jan, 100 cm', expect.anything()],
		['readingLogged', 'Put right', expect.stringContaining('Reading of 28 Jan, 10 cm')],
		['wentThrough', 'Put right', expect.stringContaining('The ice broke on 28 Jan')],
		['wentThrough', 'Taken back', expect.stringContaining('The ice broke on 28 Jan')]
	]);
	expect(new Set(bodies().map((body) => body.id)).size).toBe(4);
	expect(
		permissionsIn(
			bodies()
				.map(({ text }) => text)
				.join(' ')
		)
	).toEqual([]);
});

test('a reading that is put right or deleted while its message waits is never sent as it was', async () => {
	const { ctx, id, tell } = await hooked();
	const mistyped = await tell({ holes: [{ total_m: 1 }] });
	const deleted = await tell({ holes: [{ total_m: 2 }] });
	await updateReading(ctx, id, mistyped, { holes: [{ ...NO_HOLE, total_m: 0.1 }] });
	await deleteReading(ctx, id, deleted);
	await lookAt(ctx, id);
	await deliverDue(ctx);
	expect(bodies().map(({ title }) => title)).toEqual([
		'Reading of 28 Jan, 10 cm: a drilled hole decides'
	]);
});

test('messages come in their order, and one that is refused holds back those behind it', async () => {
	const { ctx, setNow, tell } = await hooked();
	for (const place of ['one', 'two', 'three']) await tell({ place });
	receiver.reply = (response, { body }) =>
		response.writeHead(body.includes('two') ? 503 : 200).end();
	expect(await deliverDue(ctx)).toBe(1);
	receiver.reply = answering(200);
	expect(await deliverDue(ctx)).toBe(0);
	setNow('2027-01-29T12:00:00Z');
	expect(await deliverDue(ctx)).toBe(2);
	const told = bodies().map(({ text }) => /one|two|three/.exec(text)?.[0]);
	expect(told).toEqual(['one', 'two', 'two', 'three']);
	// The receiver tells the second try by its id.
	expect(bodies()[1]?.id).toBe(bodies()[2]?.id);
});

test('what newer news has overtaken while it waited is not sent, and other matters keep their turn', async () => {
	const { ctx, id, state } = await hooked();
	const kinds = ['statusChanged', 'thawAhead', 'weatherStale'];
	await setWebhook(ctx, id, webhookInput.parse({ address: receiver.at(), kinds }));
	const lake = await getLake(ctx, id);
	const tell = async (title: string, kind: MessageKind, site: string | null, loadId: string) => {
		const load = kind === 'statusChanged' ? loadId : null;
		const message = { kind, loadId: load, on: null, title, text: title };
		const row = toRow(id, message, ctx.now().toISOString());
		await ctx.db.transaction().execute((tx) => enqueueMessages(tx, ctx, lake, [{ row, site }]));
	};
	await tell('car reached', 'statusChanged', 'main', 'car');
	await tell('car reached in the bay', 'statusChanged', 'bay', 'car');
	await tell('truck not yet', 'statusChanged', 'main', 'truck');
	await tell('thaw on Friday', 'thawAhead', 'main', '');
	await tell('stale', 'weatherStale', null, '');
	await tell('car withheld', 'statusChanged', 'main', 'car');
	await tell('thaw today', 'thawAhead', 'main', '');
	expect((await state())?.waiting).toBe(5);
	await deliverDue(ctx);
	expect(bodies().map(({ title, site, load }) => [title, site, load])).toEqual([
		['car reached in the bay', 'bay', 'car'],
		['truck not yet', 'main', 'truck'],
		['stale', null, null],
		['car withheld', 'main', 'car'],
		['thaw today', 'main', null]
	]);
});

test('of a reading that is put right again and again only the last is sent', async () => {
	const { ctx, id, tell } = await hooked();
	const reading = await tell({ holes: [{ total_m: 1 }] });
	await deliverDue(ctx);
	for (const total_m of [0.9, 0.1]) {
		await updateReading(ctx, id, reading, { holes: [{ ...NO_HOLE, total_m }] });
		await lookAt(ctx, id);
	}
	await deliverDue(ctx);
	expect(bodies()).toMatchObject([{ reading, site: 'main' }, { reading }]);
	expect(bodies()[1]?.title).toContain('10 cm');
	await updateReading(ctx, id, reading, { holes: [{ ...NO_HOLE, total_m: 0.8 }] });
	await lookAt(ctx, id);
	await deleteReading(ctx, id, reading);
	await lookAt(ctx, id);
	await deliverDue(ctx);
	expect(bodies().slice(2)).toMatchObject([{ title: expect.stringContaining('Taken back') }]);
});

test('it is tried again later and later, then given up with a sentence, and taken up on request', async () => {
	const { ctx, id, setNow, tell, state } = await hooked();
	await tell();
	receiver.reply = answering(500);
	let now_ms = Date.parse('2027-01-29T03:00:00Z');
	for (let failure = 1; failure <= GIVE_UP_AFTER; failure++) {
		setNow(new Date(now_ms).toISOString());
		await deliverDue(ctx);
		expect(receiver.received).toHaveLength(failure);
		// Just before its time nothing is sent.
		setNow(new Date(now_ms + wait_min(failure) * 60_000 - 1000).toISOString());
		await deliverDue(ctx);
		expect(receiver.received).toHaveLength(failure);
		now_ms += wait_min(failure) * 60_000;
	}
	setNow(new Date(now_ms + 86_400_000).toISOString());
	await deliverDue(ctx);
	expect(receiver.received).toHaveLength(GIVE_UP_AFTER);
	const stopped = await state();
	expect(stopped?.stoppedAt).not.toBeNull();
	expect(stopped?.trouble).toBe(
		`127.0.0.1:${new URL(receiver.at()).port} answered 500: see its own log for why.`
	);
	expect(stopped?.waiting).toBe(1);
	receiver.reply = answering(200);
	await resumeWebhook(ctx, id);
	expect(await deliverDue(ctx)).toBe(1);
	expect(await state()).toMatchObject({ stoppedAt: null, failures: 0, waiting: 0, trouble: null });
});

test('a wait that a clock ahead began keeps nothing from being sent once the clock is right', async () => {
	const { ctx, setNow, tell } = await hooked();
	await tell();
	receiver.reply = answering(500);
	setNow('2027-01-31T03:00:00Z');
	await deliverDue(ctx);
	receiver.reply = answering(204);
	setNow('2027-01-29T03:00:00Z');
	expect(await deliverDue(ctx)).toBe(1);
});

test('the waits double from a minute to six hours, three days in all', () => {
	const waits = Array.from({ length: GIVE_UP_AFTER - 1 }, (_, index) => wait_min(index + 1));
	expect(waits.slice(0, 10)).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 360]);
	const all_h = waits.reduce((sum, wait) => sum + wait, 0) / 60;
	expect(all_h).toBeGreaterThan(60);
	expect(all_h).toBeLessThan(80);
});

test('a receiver that is gone for good is not asked again', async () => {
	const { ctx, tell, state } = await hooked();
	await tell();
	receiver.reply = answering(410);
	await deliverDue(ctx);
	expect((await state())?.stoppedAt).not.toBeNull();
	expect((await state())?.trouble).toMatch(/410: it wants no more/);
});

test('a redirect is not followed', async () => {
	const { ctx, tell, state } = await hooked();
	await tell();
	receiver.reply = answering(307, { location: receiver.at('localhost') });
	await deliverDue(ctx);
	expect(receiver.received).toHaveLength(1);
	expect((await state())?.trouble).toMatch(/a redirect, and those are not followed/);
});

test('a receiver that does not answer in time has failed', async () => {
	receiver.reply = () => undefined;
	const posted = await postWebhook(
		{ address: receiver.at(), key: 'k' },
		{ id: 'i', body: '{}' },
		{ allowedHosts: ['127.0.0.1'], userAgent: 'test', timeOut_ms: 150 }
	);
	expect(posted).toMatchObject({ isTaken: false, text: expect.stringMatching(/within 0.15 s/) });
});

test('an answer without end is not read', async () => {
	receiver.reply = (response) => {
		response.writeHead(200);
		const timer = setInterval(() => response.write('x'.repeat(65_536)), 1);
		response.on('close', () => clearInterval(timer));
	};
	const posted = await postWebhook(
		{ address: receiver.at(), key: 'k' },
		{ id: 'i', body: '{}' },
		{ allowedHosts: ['127.0.0.1'], userAgent: 'test', timeOut_ms: 2000 }
	);
	expect(posted).toEqual({ isTaken: true, status: 200 });
});

test('a test message is sent at once, tells nothing and is not kept', async () => {
	const { ctx, id, state } = await hooked();
	expect(await testWebhook(ctx, id)).toEqual({ isTaken: true, status: 204 });
	const [body] = bodies();
	expect(body).toMatchObject({ kind: 'test', load: null, on: null });
	expect(body?.text).toMatch(/tells nothing of the ice\. A drilled hole decides\.$/);
	receiver.reply = answering(404);
	expect(await testWebhook(ctx, id)).toMatchObject({ isTaken: false, isGone: false });
	expect((await state())?.failures).toBe(0);
});

test('removed, it hears nothing more, and what waited is gone', async () => {
	const { ctx, id, tell } = await hooked();
	await tell();
	await removeWebhook(ctx, id);
	expect(await deliverDue(ctx)).toBe(0);
	expect(receiver.received).toEqual([]);
	expect((await getTelling(ctx, id)).webhook).toBeNull();
	expect(await ctx.db.selectFrom('webhook_outbox').selectAll().execute()).toEqual([]);
});

test('neither the address nor the key is told again', async () => {
	const { ctx, id, key } = await hooked();
	const told = JSON.stringify(await getTelling(ctx, id));
	expect(told).toContain('"host":"127.0.0.1:');
	expect(told).not.toContain('room=7');
	expect(told).not.toContain(key);
});
