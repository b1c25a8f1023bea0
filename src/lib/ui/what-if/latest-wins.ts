/**
 * One question at a time: while it is being answered only the newest of the others waits, and the
 * rest are dropped. Answers come in the order asked, so what is shown never goes back.
 */
export class LatestWins<Question extends { id: number }> {
	#send: (question: Question) => void;
	#open: Question | null = null;
	#waiting: Question | null = null;
	/** Answers up to this one are no longer wanted. */
	#forgotten = -1;

	constructor(send: (question: Question) => void) {
		this.#send = send;
	}

	get isBusy(): boolean {
		return this.#open !== null;
	}

	ask(question: Question): void {
		if (this.#open) {
			this.#waiting = question;
			return;
		}
		this.#open = question;
		this.#send(question);
	}

	/** Takes note of an answer and sends what waits. True when the answer is still wanted. */
	answered(id: number): boolean {
		if (this.#open?.id !== id) return false;
		const next = this.#waiting;
		this.#open = null;
		this.#waiting = null;
		if (next) this.ask(next);
		return id > this.#forgotten;
	}

	/** Drops what waits, and the answer that is under way. */
	forget(): void {
		this.#waiting = null;
		if (this.#open) this.#forgotten = this.#open.id;
	}
}
