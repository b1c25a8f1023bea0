import { latestSeen } from '#lib/ui/offline/clock.ts';
import { FACTS } from '#lib/ui/offline/names.ts';
import { keptAge_ms, noticeOf } from '#lib/ui/offline/notice.ts';
import { policyOf, unpacked } from './packing.ts';

/** A kept page as it is shown: it says of itself what it is, before any script of its own runs. */
export async function marked(kept: Response, hasTyped = false): Promise<Response> {
	const html = await unpacked(kept).text();
	const now = new Date();
	const stamp_ms = (name: string) => Number(kept.headers.get(name));
	const stamps = { keptAt_ms: stamp_ms(FACTS.keptAt), madeAt_ms: stamp_ms(FACTS.madeAt) };
	const age_ms = keptAge_ms(stamps, now.getTime(), await latestSeen());
	const madeAt = new Date(now.getTime() - Math.min(age_ms, now.getTime()));
	const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
	const { isOld, lead, text } = noticeOf(madeAt, now, timeZone);
	const state = isOld ? 'old' : 'kept';
	const notice = `<div id="not-fresh" class="${state}" role="status">${hasTyped ? TYPED : ''}<p><b>${lead}</b> ${text}</p><p><a href="">Try again</a> <a href="/on-this-phone">What is kept here</a></p></div>`;
	const body = html
		.replace('<html ', `<html data-kept="${madeAt.getTime()}" data-state="${state}" `)
		.replace(/<body[^>]*>/, (start) => `${start}${notice}`);
	const headers = { 'content-type': 'text/html; charset=utf-8', ...policyOf(kept.headers) };
	return new Response(body, { headers });
}

/** Of what was just sent before its page had woken. */
const TYPED =
	'<p id="typed-kept"><b>What you typed is kept on this device, not sent yet.</b> It is sent by itself once there is a connection.</p>';

/** Where nothing is kept. */
export function nothingKept(hasTyped = false): Response {
	return page(
		'No connection, and this page is not kept on this device.',
		`${hasTyped ? TYPED : ''}<p>Kept are the pages of lakes that were opened here with a connection, as they are without a day or a winter chosen.</p><p><a href="">Try again</a></p>`
	);
}

/** Where the browser refuses to keep what was typed: the form still has it. */
export function notKept(): Response {
	return page(
		'No connection, and nothing can be kept on this device.',
		'<p>What you typed was not sent. Go back: the form still has it.</p>'
	);
}

/** Of a page that loads nothing; its colours are those of `tokens.css`. */
const STYLE =
	':root{color-scheme:light dark}' +
	'body{margin:0;padding:1rem clamp(1rem,4vw,3rem);background:light-dark(#f3f5f2,#0f1519);color:light-dark(#13222b,#e8eeee);' +
	'font:1rem/1.5 "Atkinson Hyperlegible",ui-sans-serif,system-ui,sans-serif}' +
	'main{max-width:38rem}h1{font-size:1.6rem;line-height:1.15}' +
	'a{display:inline-block;padding:.6rem 0;color:inherit}';

function page(title: string, text: string): Response {
	const body = `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>No connection · Frostledger</title><style>${STYLE}</style></head><body><main><h1>${title}</h1>${text}<p><a href="/">Lakes</a></p><p><a href="/on-this-phone">What is kept here</a></p></main></body></html>`;
	return new Response(body, {
		status: 503,
		headers: { 'content-type': 'text/html; charset=utf-8' }
	});
}
