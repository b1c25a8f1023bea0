import { expect, test } from 'vitest';
import { answerOf } from '#lib/ui/what-if/answer.ts';
import { NO_CHANGE, type FromWorker, type ToWorker } from '#lib/ui/what-if/protocol.ts';
import { Session, type Line } from '#lib/ui/what-if/session.svelte.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const ANSWER = answerOf(inventedFuture());
const COLDER = { ...NO_CHANGE, warming_K: -2 };

/** A worker that answers when it is told to. */
class FakeLine implements Line {
	posted: ToWorker[] = [];
	isClosed = false;
	#listen: (message: FromWorker) => void = () => undefined;

	post(message: ToWorker): void {
		this.posted.push(message);
	}

	onAnswer(listen: (message: FromWorker) => void): void {
		this.#listen = listen;
	}

	close(): void {
		this.isClosed = true;
	}

	get asked(): number[] {
		return this.posted.flatMap((message) => (message.kind === 'ask' ? [message.members] : []));
	}

	async answer(outcome: 'answer' | 'nothing' | 'failed' = 'answer'): Promise<void> {
		const id = this.posted
			.flatMap((message) => (message.kind === 'ask' ? [message.id] : []))
			.at(-1);
		if (id === undefined) throw new Error('nothing was asked');
		if (outcome === 'failed') this.#listen({ kind: 'failed', id, message: 'out of memory' });
		else this.#listen({ kind: 'answer', id, answer: outcome === 'nothing' ? null : ANSWER });
		await settled();
	}
}

async function settled(): Promise<void> {
	for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
}

function session() {
	const line = new FakeLine();
	let opened = 0;
	const connect = () => {
		opened += 1;
		return Promise.resolve(line);
	};
	return { line, tried: new Session(connect, 600), opened: () => opened };
}

test('nothing is fetched before the first touch, and then once', async () => {
	const { tried, opened } = session();
	await settled();
	expect(opened()).toBe(0);
	tried.drag(COLDER);
	tried.drag(COLDER);
	await settled();
	expect(opened()).toBe(1);
});

test('dragging asks few members, letting go asks all', async () => {
	const { line, tried } = session();
	tried.drag(COLDER);
	await settled();
	expect(tried.state).toBe('starting');
	for (const warming_K of [-1, -2, -3]) tried.drag({ ...COLDER, warming_K });
	tried.release(COLDER);
	await line.answer();
	expect(line.asked).toEqual([100, 600]);
	expect(tried.answer).toBe(ANSWER);
	expect(tried.state).toBe('answering');
	await line.answer();
	expect(tried.state).toBe('done');
});

test('back to as it is: the answer goes, and a late one is not shown', async () => {
	const { line, tried } = session();
	tried.release(COLDER);
	await settled();
	tried.reset();
	expect(tried.state).toBe('untouched');
	await line.answer();
	expect(tried.answer).toBeNull();
	expect(tried.state).toBe('untouched');
});

test('a failure is said, and the next touch tries again', async () => {
	const { line, tried } = session();
	tried.release(COLDER);
	await settled();
	await line.answer('failed');
	expect([tried.state, tried.problem]).toEqual(['failed', 'out of memory']);
	tried.release(COLDER);
	await settled();
	await line.answer();
	expect([tried.state, tried.problem]).toEqual(['done', null]);
});

test('data that does not come is a failure, and is fetched anew on the next touch', async () => {
	const line = new FakeLine();
	let isDown = true;
	const tried = new Session(
		() => (isDown ? Promise.reject(new Error('no network')) : Promise.resolve(line)),
		600
	);
	tried.release(COLDER);
	await settled();
	expect([tried.state, tried.problem]).toEqual(['failed', 'no network']);
	isDown = false;
	tried.release(COLDER);
	await settled();
	await line.answer();
	expect(tried.state).toBe('done');
});

test('where there is no ice to estimate it says so', async () => {
	const { line, tried } = session();
	tried.release(COLDER);
	await settled();
	await line.answer('nothing');
	expect([tried.state, tried.answer]).toEqual(['nothing', null]);
});

test('the line is closed with the page', async () => {
	const { line, tried } = session();
	tried.drag(COLDER);
	await settled();
	tried.close();
	await settled();
	expect(line.isClosed).toBe(true);
});
