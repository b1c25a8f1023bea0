import { createHmac } from 'node:crypto';
import { causesOf, codeOf } from '../../../weather/source/http/network-fault.ts';
import { AddressRefused, guardedAgent } from '../../../weather/source/http/guarded-agent.ts';
import { dropBody } from '../../../weather/source/http/read-body.ts';
import { privateWebhook, webhookProblem } from './address.ts';

export type Posted =
	| { isTaken: true; status: number }
	/** `isGone`: the receiver wants no more of them. */
	| { isTaken: false; isGone: boolean; text: string };

export interface PostOptions {
	allowedHosts: readonly string[];
	userAgent: string;
	timeOut_ms: number;
	signal?: AbortSignal;
}

/** Of the body's bytes, keyed with the webhook's own secret, in hexadecimal. */
const SIGNATURE_HEADER = 'frostledger-hmac-sha256';
const ID_HEADER = 'frostledger-id';

export const TIME_OUT_MS = 10_000;

/** @example signatureOf('key', '{}') */
function signatureOf(key: string, body: string): string {
	return createHmac('sha256', key).update(body, 'utf8').digest('hex');
}

/**
 * Sends one message once. Taken is what is answered by 2xx; a redirect is not followed, and what the
 * receiver answers is not read.
 */
export async function postWebhook(
	{ address, key }: { address: string; key: string },
	{ id, body }: { id: string; body: string },
	options: PostOptions
): Promise<Posted> {
	const problem = webhookProblem(address, options.allowedHosts);
	if (problem !== null) return refused(`The address ${problem}.`);
	const { host } = new URL(address);
	const timeUp = AbortSignal.timeout(options.timeOut_ms);
	const signal = options.signal ? AbortSignal.any([timeUp, options.signal]) : timeUp;
	const agent = guardedAgent(options.allowedHosts, options.timeOut_ms);
	try {
		const guarded: RequestInit & { dispatcher: typeof agent } = {
			method: 'POST',
			body,
			headers: {
				'content-type': 'application/json',
				'user-agent': options.userAgent,
				[ID_HEADER]: id,
				[SIGNATURE_HEADER]: signatureOf(key, body)
			},
			redirect: 'manual',
			signal,
			dispatcher: agent
		};
		const response = await fetch(address, guarded);
		dropBody(response.body);
		return judged(host, response.status);
	} catch (error) {
		return refused(faultText(error, host, timeUp.aborted ? options.timeOut_ms : null));
	} finally {
		await agent.destroy();
	}
}

function judged(host: string, status: number): Posted {
	if (status >= 200 && status < 300) return { isTaken: true, status };
	if (status === 410) {
		const text = `${host} answered 410: it wants no more messages at this address. Enter another, or remove the webhook.`;
		return { isTaken: false, isGone: true, text };
	}
	if (status >= 300 && status < 400)
		return refused(
			`${host} answered ${status}, a redirect, and those are not followed: enter the address where it leads.`
		);
	if (status === 401 || status === 403 || status === 404)
		return refused(`${host} answered ${status}: see whether the address is still the right one.`);
	return refused(`${host} answered ${status}: see its own log for why.`);
}

/** By codes: an error's own words may hold the address, which may hold a secret. */
function faultText(error: unknown, host: string, timeOut_ms: number | null): string {
	const causes = causesOf(error);
	if (causes.some((cause) => cause instanceof AddressRefused))
		return `The address ${privateWebhook(host)}.`;
	const codes = causes.map(codeOf);
	const has = (pattern: RegExp) => codes.some((code) => pattern.test(code));
	if (timeOut_ms !== null || has(/TIMEOUT|TIMEDOUT/))
		return `${host} did not answer within ${(timeOut_ms ?? TIME_OUT_MS) / 1000} s.`;
	if (has(/ENOTFOUND|EAI_NONAME|ENODATA/))
		return `The name ${host} is not known: check the address for a slip of the pen.`;
	if (has(/EAI_AGAIN/))
		return `The name ${host} could not be looked up: is this machine on the network?`;
	if (has(/ECONNREFUSED/))
		return `${host} takes no connections: check the port, or wait until it is up.`;
	if (has(/CERT|SELF_SIGNED|VERIFY|TLS|SSL/))
		return `${host} could not prove who it is by its certificate: check the address.`;
	return `${host} could not be reached, or broke off before it answered.`;
}

function refused(text: string): Posted {
	return { isTaken: false, isGone: false, text };
}
