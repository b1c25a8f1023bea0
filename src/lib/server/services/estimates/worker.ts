import { parentPort, workerData } from 'node:worker_threads';
import { finish } from '#lib/model/steps.ts';
import { stepsOf } from './jobs.ts';
import { receivedJob, type SentJob } from './sent-job.ts';

/** What a thread is given that is started to run this file. */
export const ROLE = 'estimates';

/** Where this file lies, also where it was built: a thread is started with it. */
export const ADDRESS = import.meta.url;

export type FromWorker =
	{ kind: 'ready' } | { kind: 'answer'; answer: unknown } | { kind: 'failed' };

if (parentPort && workerData === ROLE) {
	const port = parentPort;
	port.on('message', (sent: SentJob) => port.postMessage(answerTo(sent)));
	port.postMessage({ kind: 'ready' } satisfies FromWorker);
}

/** An error loses its kind and its story on the way: whoever asked finds it again by running the job. */
function answerTo(sent: SentJob): FromWorker {
	try {
		return { kind: 'answer', answer: finish(stepsOf(receivedJob(sent))) };
	} catch {
		return { kind: 'failed' };
	}
}
