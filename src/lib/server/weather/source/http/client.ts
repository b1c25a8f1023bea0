import ky from 'ky';
import type { Agent } from 'undici';
import type { Fault, FetchSettings } from '../contract.ts';
import { addressProblem } from './address-rules.ts';
import { AddressRefused, guardedAgent } from './guarded-agent.ts';
import { networkFault } from './network-fault.ts';
import { dropBody, readBody } from './read-body.ts';
import { redirectTarget } from './redirect.ts';
import { isSameHost } from './same-host.ts';

export interface HttpAnswer {
	status: number;
	/** After redirects. */
	url: URL;
	headers: Headers;
	body: Uint8Array;
}

/** Either of the two: what came, whatever its status, or why nothing did. */
export type Got = { answer: HttpAnswer; fault: null } | { answer: null; fault: Fault };

export interface Question {
	url: URL;
	/** Of the source; they go to this host and to no other. */
	headers: Readonly<Record<string, string>>;
	/** The host that the source itself names: the key goes there only. */
	homeUrl: URL;
}

export interface ClientOptions {
	settings: FetchSettings;
	key: string | null;
	userAgent: string;
	signal: AbortSignal | undefined;
}

/** Tries of one and the same call, where the network fails: polite, and enough for a lost packet. */
const RETRIES = 1;

/** Calls for one refresh, with the rules of where they may go. Must be closed. */
export class HttpClient {
	calls = 0;
	bytes = 0;
	readonly #options: ClientOptions;
	readonly #agent: Agent;

	constructor(options: ClientOptions) {
		this.#options = options;
		this.#agent = guardedAgent(options.settings.allowedHosts, options.settings.timeOut_ms);
	}

	async close(): Promise<void> {
		await this.#agent.destroy();
	}

	async get(question: Question): Promise<Got> {
		const { settings, signal } = this.#options;
		const timeUp = AbortSignal.timeout(settings.timeOut_ms);
		const signals = signal ? [timeUp, signal] : [timeUp];
		const state = { host: question.url.hostname, hasBegun: false };
		try {
			return await this.#follow(question, AbortSignal.any(signals), state);
		} catch (error) {
			const { timeOut_ms, maxBytes } = settings;
			const isStopped = signal?.aborted ?? false;
			const isTimeUp = timeUp.aborted;
			const call = { ...state, timeOut_ms, maxBytes, isStopped, isTimeUp };
			return { answer: null, fault: networkFault(error, call) };
		}
	}

	async #follow(
		{ url: start, headers, homeUrl }: Question,
		signal: AbortSignal,
		state: { host: string; hasBegun: boolean }
	): Promise<Got> {
		const { settings, key } = this.#options;
		let url = start;
		for (let redirects = 0; redirects <= settings.maxRedirects; redirects += 1) {
			const problem = addressProblem(url, settings.allowedHosts);
			if (problem) return refused(problem);
			state.host = url.hostname;
			state.hasBegun = false;
			const response = await this.#send(url, isSameHost(url, homeUrl) ? headers : {}, signal);
			state.hasBegun = true;
			const target = redirectTarget(response, url, homeUrl, key);
			if (target === null) {
				const body = await readBody(response, settings.maxBytes);
				this.bytes += body.byteLength;
				return {
					answer: { status: response.status, url, headers: response.headers, body },
					fault: null
				};
			}
			dropBody(response.body);
			if (typeof target === 'string') return refused(target);
			url = target;
		}
		const text = `${start.hostname} sends the call on more than ${settings.maxRedirects} times without an answer; open the address in a browser and enter the one where it ends.`;
		return { answer: null, fault: { code: 'redirectedTooOften', text } };
	}

	#send(
		url: URL,
		headers: Readonly<Record<string, string>>,
		signal: AbortSignal
	): Promise<Response> {
		const isFinal = (error: Error) => signal.aborted || error.cause instanceof AddressRefused;
		return ky(url, {
			headers: { accept: ACCEPT, ...headers, 'user-agent': this.#options.userAgent },
			redirect: 'manual',
			throwHttpErrors: false,
			timeout: false,
			signal,
			retry: { limit: RETRIES, shouldRetry: ({ error }) => (isFinal(error) ? false : undefined) },
			fetch: (input, init) => {
				this.calls += 1;
				const guarded: RequestInit & { dispatcher: Agent } = { ...init, dispatcher: this.#agent };
				return fetch(input, guarded);
			}
		});
	}
}

const ACCEPT = 'application/json, application/geo+json, text/csv, */*;q=0.5';

function refused(text: string): Got {
	return { answer: null, fault: { code: 'addressNotAllowed', text } };
}
