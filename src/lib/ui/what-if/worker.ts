import { whatIf } from '#lib/model/ensemble/what-if.ts';
import { readingsEffect } from '#lib/model/readings-effect.ts';
import type { ToWorker } from './protocol.ts';
import { serve } from './serve.ts';

const answer = serve(whatIf, readingsEffect);

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
	const said = answer(data);
	if (said) self.postMessage(said);
});
