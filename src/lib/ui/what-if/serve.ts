import type { Change } from '#lib/model/ensemble/what-if.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import { answerOf } from './answer.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

type Model = (input: OutlookInput, change: Change, members: number) => Forecast | null;

/** Answers messages by the model: what the worker does, apart from being one. */
export function serve(model: Model): (message: ToWorker) => FromWorker | null {
	let input: OutlookInput | null = null;
	return (message) => {
		if (message.kind === 'input') {
			input = message.input;
			return null;
		}
		const { id, change, members } = message;
		if (input === null) return { kind: 'failed', id, message: 'asked before the input came' };
		try {
			const forecast = model(input, change, members);
			return { kind: 'answer', id, answer: forecast && answerOf(forecast) };
		} catch (cause) {
			return {
				kind: 'failed',
				id,
				message: cause instanceof Error ? cause.message : String(cause)
			};
		}
	};
}
