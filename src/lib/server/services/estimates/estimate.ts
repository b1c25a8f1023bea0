import { logFailure } from '../failure.ts';
import { logEvent } from '../log.ts';
import { inQuiet, inTurns, type QuietRun } from '../in-turns.ts';
import { stepsOf, type Answers, type Job, type Kind } from './jobs.ts';
import { sentJob } from './sent-job.ts';
import { workerStarter } from './start-worker.ts';
import { thisMachine, workerCount } from './worker-count.ts';
import { WorkerPool, type Task } from './worker-pool.ts';

let pool: WorkerPool | null = null;

/** From when its workers are ready, long runs are made beside the thread that answers requests. */
export async function startEstimating({
	starter = workerStarter,
	most = workerCount(thisMachine())
} = {}): Promise<{ stop: () => Promise<void> }> {
	const onDeath = (cause: unknown) =>
		logFailure(
			'a worker that makes estimates, which are made in turns with requests instead',
			cause
		);
	const onReady = () => logEvent('workers', { atMost: most });
	const own = new WorkerPool({ start: await starter(), most, onReady, onDeath });
	pool = own;
	return {
		async stop() {
			if (pool === own) pool = null;
			await own.stop();
		}
	};
}

/** Makes a run that somebody waits for. */
export function estimate<K extends Kind>(job: Job<K>): Promise<Answers[K]> {
	return run(job, false).result;
}

/** Makes one that nobody waits for yet, behind all that somebody does. */
export function estimateInQuiet<K extends Kind>(job: Job<K>): QuietRun<Answers[K]> {
	return run(job, true);
}

function run<K extends Kind>(job: Job<K>, isQuiet: boolean): QuietRun<Answers[K]> {
	const sent = pool === null || isShort(job) ? null : sentJob(job);
	if (pool === null || sent === null) return inSlices(job, isQuiet);
	const task: Task = { sent, isQuiet, onAnswer: nothing, onReturn: nothing };
	const asked_ms = performance.now();
	let hurry = () => {
		task.isQuiet = false;
	};
	const result = new Promise<Answers[K]>((resolve, reject) => {
		task.onAnswer = (answer) => {
			logEvent('estimate', { kind: job.kind, after_ms: Math.round(performance.now() - asked_ms) });
			resolve(answer as Answers[K]);
		};
		task.onReturn = () => {
			const run = inSlices(job, task.isQuiet);
			hurry = run.hurry;
			run.result.then(resolve, reject);
		};
	});
	return pool.take(task) ? { result, hurry: () => hurry() } : inSlices(job, isQuiet);
}

/** Done before it could be copied. */
function isShort({ kind, content }: Job): boolean {
	return kind === 'outlook' && content.input.record.freezeUpOn === null;
}

function inSlices<K extends Kind>(job: Job<K>, isQuiet: boolean): QuietRun<Answers[K]> {
	const start = () => stepsOf(job);
	return isQuiet ? inQuiet(start) : { result: inTurns(start), hurry: nothing };
}

function nothing(): void {
	// There is nothing to hurry, or nobody to tell.
}
