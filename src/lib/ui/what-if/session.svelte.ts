import type { Change } from '#lib/model/ensemble/what-if.ts';
import type { IfAnswer } from './answer.ts';
import { DragPace } from './drag-pace.ts';
import { LatestWins } from './latest-wins.ts';
import type { Ask, FromWorker, ToWorker } from './protocol.ts';

/** A line to whoever answers. */
export interface Line {
	post(message: ToWorker): void;
	/** Set once, before anything is posted. */
	onAnswer(listen: (message: FromWorker) => void): void;
	close(): void;
}

/** Opens the line and hands the input over it. Called on the first touch only. */
export type Connect = () => Promise<Line>;

/** What the person tries out at the moment, and the answer to it. Kept in the page, nowhere else. */
export class Session {
	/** `null`: nothing is changed, or no answer yet. */
	answer = $state.raw<IfAnswer | null>(null);
	state = $state<'untouched' | 'starting' | 'answering' | 'done' | 'nothing' | 'failed'>(
		'untouched'
	);
	problem = $state<string | null>(null);

	#connect: Connect;
	#fullMembers: number;
	#line: Promise<Line> | null = null;
	#next = 0;
	#full = -1;
	#pace = new DragPace();
	#sentAt_ms = 0;
	#queue = new LatestWins<Ask>((ask) => void this.#post(ask));

	constructor(connect: Connect, fullMembers: number) {
		this.#connect = connect;
		this.#fullMembers = fullMembers;
	}

	/** While something is dragged: a quick answer by few members. */
	drag(change: Change): void {
		this.#ask(change, this.#pace.members);
	}

	/** When it is let go: the answer by all of them. */
	release(change: Change): void {
		this.#full = this.#next;
		this.#ask(change, this.#fullMembers);
	}

	/** Back to how it is. */
	reset(): void {
		this.#queue.forget();
		this.answer = null;
		this.problem = null;
		this.state = 'untouched';
	}

	close(): void {
		void this.#line?.then((line) => line.close());
		this.#line = null;
	}

	#ask(change: Change, members: number): void {
		this.state = this.#line ? 'answering' : 'starting';
		this.problem = null;
		this.#queue.ask({ id: this.#next++, change, members });
	}

	async #post(ask: Ask): Promise<void> {
		try {
			this.#line ??= this.#open();
			const line = await this.#line;
			this.#sentAt_ms = performance.now();
			line.post({ kind: 'ask', ...ask });
		} catch (cause) {
			// So that the next touch tries anew.
			this.#line = null;
			const message = cause instanceof Error ? cause.message : String(cause);
			this.#take({ kind: 'failed', id: ask.id, message });
		}
	}

	async #open(): Promise<Line> {
		const line = await this.#connect();
		line.onAnswer((message) => this.#take(message));
		return line;
	}

	#take(message: FromWorker): void {
		if (!this.#queue.answered(message.id)) return;
		if (message.kind === 'failed') {
			this.state = 'failed';
			this.problem = message.message;
			return;
		}
		if (message.id !== this.#full) this.#pace.took(performance.now() - this.#sentAt_ms);
		if (message.kind === 'effect') return;
		this.answer = message.answer;
		const isLast = message.id === this.#full && !this.#queue.isBusy;
		if (isLast) this.state = message.answer === null ? 'nothing' : 'done';
	}
}
