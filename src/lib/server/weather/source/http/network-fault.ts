import type { Fault } from '../contract.ts';
import { AddressRefused } from './guarded-agent.ts';
import { TooLarge } from './read-body.ts';

export interface Call {
	host: string;
	timeOut_ms: number;
	maxBytes: number;
	/** True once the head of the answer was there. */
	hasBegun: boolean;
	isTimeUp: boolean;
	isStopped: boolean;
}

/** What an error of the network means, told by its code: its own words may hold the address. */
export function networkFault(error: unknown, call: Call): Fault {
	const { host } = call;
	if (call.isStopped) return { code: 'stopped', text: `The call of ${host} was stopped.` };
	const causes = causesOf(error);
	const refused = causes.find((cause) => cause instanceof AddressRefused);
	if (refused) return { code: 'addressNotAllowed', text: refused.message };
	if (causes.some((cause) => cause instanceof TooLarge)) return tooLarge(call);
	const codes = causes.map(codeOf);
	if (call.isTimeUp || codes.some((code) => /TIMEOUT|TIMEDOUT/.test(code))) return timeOut(call);
	return call.hasBegun ? brokenOff(call) : { code: 'unreachable', text: unreachable(host, codes) };
}

function timeOut({ host, timeOut_ms }: Call): Fault {
	const text = `${host} did not finish its answer within ${timeOut_ms / 1000} s. It is asked again later; if that goes on, ask for fewer days in one call.`;
	return { code: 'timeOut', text };
}

function tooLarge({ host, maxBytes }: Call): Fault {
	const limit = maxBytes >= 1e6 ? `${maxBytes / 1e6} MB` : `${maxBytes} bytes`;
	const text = `The answer of ${host} is larger than ${limit} and was left unread; ask for fewer days or fewer values in one call.`;
	return { code: 'tooLarge', text };
}

function brokenOff({ host }: Call): Fault {
	const text = `${host} broke off in the middle of its answer. Nothing of it is used; it is asked again later.`;
	return { code: 'truncated', text };
}

function unreachable(host: string, codes: readonly string[]): string {
	const has = (pattern: RegExp) => codes.some((code) => pattern.test(code));
	if (has(/ENOTFOUND|EAI_NONAME|ENODATA/))
		return `The name ${host} is not known; check the address for a slip of the pen.`;
	if (has(/EAI_AGAIN/))
		return `The name ${host} could not be looked up; check that this machine is on the network.`;
	if (has(/ECONNREFUSED/))
		return `${host} takes no connections at this address; check the port, or wait until it is up again.`;
	if (has(/CERT|SELF_SIGNED|VERIFY|TLS|SSL/))
		return `${host} could not prove who it is by its certificate; check the address, and that the clock of this machine is right.`;
	return `${host} could not be reached, or broke off before it answered. It is asked again later; check the address if that goes on.`;
}

/** An error and what caused it, the innermost last. */
export function causesOf(error: unknown): unknown[] {
	const causes: unknown[] = [];
	let cause: unknown = error;
	while (cause !== undefined && cause !== null && causes.length < 8) {
		causes.push(cause);
		if (cause instanceof AggregateError) causes.push(...cause.errors);
		cause = cause instanceof Error ? cause.cause : undefined;
	}
	return causes;
}

export function codeOf(cause: unknown): string {
	return typeof cause === 'object' && cause !== null && 'code' in cause ? String(cause.code) : '';
}
