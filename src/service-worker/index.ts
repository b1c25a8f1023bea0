/// <reference types="@sveltejs/kit" />
import { version } from '$service-worker';
import { lakeOf } from '#lib/ui/offline/keepable.ts';
import { SEND_TAG, type ToServiceWorker } from '#lib/ui/offline/names.ts';
import { sendWaiting } from '#lib/ui/offline/send-waiting.ts';
import { dataAnswer, inputAnswer, pageAnswer } from './answers.ts';
import { buildFile, forgetBuilds, isBuildFile, keepBuild } from './build-files.ts';
import { gather, lakeChanged } from './gather.ts';
import { formAnswer, isHalfTyped, isTypedForm, stayingAnswer } from './typed-forms.ts';
import { eraNow, forgetPages, keep, listKept } from './kept-pages.ts';

const worker = self as unknown as ServiceWorkerGlobalScope;

/** Whoever comes in or goes out here is shown nothing of whoever was here before. */
const COMING_AND_GOING = /^\/(sign-in|account)(\/|$)/;
const WITHOUT_LAKE = '/on-this-phone';

worker.addEventListener('install', (event) => {
	event.waitUntil(keepBuild().then(() => worker.skipWaiting()));
});

worker.addEventListener('activate', (event) => {
	event.waitUntil(takeOver());
});

worker.addEventListener('fetch', (event) => {
	const { request } = event;
	const url = new URL(request.url);
	if (url.origin !== location.origin) return;
	const later = (work: Promise<unknown>) => event.waitUntil(work.catch(() => undefined));
	if (request.method !== 'GET') {
		later(written(url));
		if (isTypedForm(request)) event.respondWith(formAnswer(request));
		else if (isHalfTyped(request)) event.respondWith(stayingAnswer(request));
		return;
	}
	if (isBuildFile(url)) return event.respondWith(buildFile(request));
	if (url.pathname.endsWith('/what-if.json')) return event.respondWith(inputAnswer(event, later));
	if (url.pathname.endsWith('__data.json')) return event.respondWith(dataAnswer(event, later));
	if (request.mode === 'navigate') event.respondWith(pageAnswer(event, later));
});

worker.addEventListener('message', (event) => {
	const told = event.data as ToServiceWorker;
	if (told.kind === 'opened') {
		const lake = lakeOf(new URL(told.path, location.origin));
		if (lake !== null) event.waitUntil(gather(lake));
	} else if (told.kind === 'forgetPages' || told.kind === 'forgetAll') {
		const forGood = told.kind === 'forgetAll';
		event.waitUntil(forgetPages(forGood).then(() => event.ports[0]?.postMessage('done')));
	}
});

/** Background Sync is no standard yet, and its event has no type. */
worker.addEventListener('sync', (event) => {
	const sync = event as ExtendableEvent & { tag: string };
	if (sync.tag === SEND_TAG) sync.waitUntil(sendWaiting());
});

async function written(url: URL): Promise<void> {
	if (COMING_AND_GOING.test(url.pathname)) return forgetPages();
	const path = url.pathname.replace(/^\/api\/v1/, '');
	const lake = lakeOf(new URL(path, url)) ?? /^\/lakes\/([\w-]+)\//.exec(path)?.[1];
	if (lake) lakeChanged(lake);
}

/** Pages of an older build are fetched anew; its files stay as long as that has not been done. */
async function takeOver(): Promise<void> {
	await worker.clients.claim();
	const old = (await listKept()).filter(({ build }) => build !== version);
	const asked = eraNow();
	const paths = old.map(({ url }) => url.pathname + url.search);
	for (const path of [WITHOUT_LAKE, ...paths]) {
		const response = await fetch(path).catch(() => null);
		if (response) await keep(new URL(path, location.origin), response, asked);
	}
	await forgetBuilds(new Set((await listKept()).map(({ build }) => build)));
}
