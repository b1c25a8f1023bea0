import { expect, onTestFinished, test } from 'vitest';
import { toldMessages } from '../../../../src/lib/server/services/telling/messages.ts';
import { startTelling } from '../../../../src/lib/server/services/telling/schedule.ts';
import {
	setWebhook,
	webhookInput
} from '../../../../src/lib/server/services/telling/webhook/webhook.ts';
import { logReading, tellingLake } from '../../../support/telling-lake.ts';
import { startReceiver } from '../../../support/webhook-receiver.ts';

/** A lake whose webhook wants to hear of places where somebody went through. */
async function hooked() {
	const receiver = await startReceiver();
	onTestFinished(() => receiver.stop());
	const lake = await tellingLake();
	const ctx = { ...lake.ctx, webhookHosts: ['127.0.0.1'] };
	const input = webhookInput.parse({ address: receiver.at(), kinds: ['wentThrough'] });
	await setWebhook(ctx, lake.id, input);
	return { ...lake, ctx, receiver };
}

const WENT_THROUGH = { kind: 'wentThrough', holes: [] };

test('what is logged is told and sent without anybody asking', async () => {
	const lake = await hooked();
	const telling = startTelling(lake.ctx);
	onTestFinished(() => telling.stop());
	await logReading(lake, WENT_THROUGH);
	await expect.poll(() => lake.receiver.received.length, { timeout: 15_000 }).toBe(1);
});

test('stopped and started again, it tells nothing a second time', async () => {
	const lake = await hooked();
	const first = startTelling(lake.ctx);
	await logReading(lake, WENT_THROUGH);
	await expect.poll(() => lake.receiver.received.length, { timeout: 15_000 }).toBe(1);
	await first.stop();
	const second = startTelling(lake.ctx);
	onTestFinished(() => second.stop());
	await logReading(lake, { ...WENT_THROUGH, place: 'another place' });
	await expect.poll(() => lake.receiver.received.length, { timeout: 15_000 }).toBe(2);
	expect(lake.receiver.received[1]?.body).toContain('another place');
	const told = await toldMessages(lake.ctx, lake.id, 10);
	expect(told.filter(({ kind }) => kind === 'wentThrough')).toHaveLength(2);
});

test('once stopped, it tells nothing', async () => {
	const lake = await hooked();
	const telling = startTelling(lake.ctx);
	await telling.stop();
	await logReading(lake, WENT_THROUGH);
	await new Promise((done) => setTimeout(done, 1000));
	expect(await toldMessages(lake.ctx, lake.id, 10)).toEqual([]);
});
