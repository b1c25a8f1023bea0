import type { Worker } from 'node:worker_threads';
import type { SentJob } from './sent-job.ts';
import type { FromWorker } from './worker.ts';

/** A job on its way through the pool. */
export interface Task {
	sent: SentJob;
	/** Nobody waits for it yet: may change while it waits. */
	isQuiet: boolean;
	onAnswer: (answer: unknown) => void;
	/** No worker did it: one ended, or the job failed. */
	onReturn: () => void;
}

interface Member {
	worker: Worker;
	isReady: boolean;
	hasAnswered: boolean;
	task: Task | null;
}

export interface PoolOptions {
	start: () => Worker;
	most: number;
	/** Told for each worker that can be given work from now on. */
	onReady: () => void;
	/** Told once, when the first worker ends unasked. */
	onDeath: (cause: unknown) => void;
}

/** Workers that do one job each at a time: what somebody waits for first, then in the order of asking. */
export class WorkerPool {
	#options: PoolOptions;
	#members = new Set<Member>();
	#waiting: Task[] = [];
	#hasTold = false;
	#isStopped = false;
	/** Not once one ended before it had answered anything: another would do no better. */
	#mayGrow = true;

	constructor(options: PoolOptions) {
		this.#options = options;
		this.#add();
	}

	/** False where no worker is ready: the job is not taken. */
	take(task: Task): boolean {
		if (!this.#hasReady()) return false;
		this.#waiting.push(task);
		this.#handOut();
		return true;
	}

	/** Returns what is not done yet. */
	async stop(): Promise<void> {
		this.#isStopped = true;
		await Promise.all([...this.#members].map(({ worker }) => worker.terminate()));
	}

	#hasReady(): boolean {
		return !this.#isStopped && [...this.#members].some(({ isReady }) => isReady);
	}

	#handOut(): void {
		for (let idle = this.#idle(); idle !== undefined; idle = this.#idle()) {
			const task = this.#next();
			if (task === undefined) return;
			give(idle, task);
		}
		const isOneComing = [...this.#members].some(({ isReady }) => !isReady);
		if (this.#waiting.length > 0 && !isOneComing) this.#add();
	}

	#idle(): Member | undefined {
		return [...this.#members].find(({ isReady, task }) => isReady && task === null);
	}

	#next(): Task | undefined {
		const wanted = this.#waiting.findIndex(({ isQuiet }) => !isQuiet);
		return this.#waiting.splice(Math.max(0, wanted), 1)[0];
	}

	#add(): void {
		const { start, most } = this.#options;
		if (this.#isStopped || !this.#mayGrow || this.#members.size >= most) return;
		let worker: Worker;
		try {
			worker = start();
		} catch (cause) {
			return this.#noteDeath(cause, false);
		}
		// Nothing is kept from ending by a worker that waits for work.
		worker.unref();
		const member: Member = { worker, isReady: false, hasAnswered: false, task: null };
		let cause: unknown = 'it ended';
		this.#members.add(member);
		worker.on('message', (message: FromWorker) => this.#hear(member, message));
		worker.on('messageerror', () => void worker.terminate());
		worker.on('error', (error) => (cause = error));
		worker.on('exit', () => this.#bury(member, cause));
	}

	#hear(member: Member, message: FromWorker): void {
		const { task, worker } = member;
		worker.unref();
		member.task = null;
		member.isReady = true;
		if (task) {
			member.hasAnswered = true;
			if (message.kind === 'answer') task.onAnswer(message.answer);
			else task.onReturn();
		} else this.#options.onReady();
		this.#handOut();
	}

	#bury(member: Member, cause: unknown): void {
		this.#members.delete(member);
		this.#noteDeath(cause, member.hasAnswered);
		member.task?.onReturn();
		this.#add();
		if (!this.#hasReady()) for (const task of this.#waiting.splice(0)) task.onReturn();
	}

	#noteDeath(cause: unknown, hadAnswered: boolean): void {
		if (this.#isStopped) return;
		this.#mayGrow &&= hadAnswered;
		if (!this.#hasTold) this.#options.onDeath(cause);
		this.#hasTold = true;
	}
}

function give(member: Member, task: Task): void {
	member.task = task;
	member.worker.ref();
	try {
		member.worker.postMessage(task.sent);
	} catch {
		// It holds what cannot be copied.
		member.task = null;
		member.worker.unref();
		task.onReturn();
	}
}
