import { judge } from './checks/judge.ts';
import { clocksApart } from './checks/clocks-apart.ts';
import { nothingMapped } from './checks/nothing-mapped.ts';
import type { Found } from './ask-spans.ts';
import type { Ask, FaultCode, SourceAnswer } from './contract.ts';
import { issueTime } from './issue-time.ts';
import { hasFallen } from './read/fallen.ts';
import type { Call } from './schema.ts';

/** Faults that say already why nothing can be used. */
const EXPLAINS: ReadonlySet<FaultCode> = new Set(['unitDoubt', 'stale', 'badMapping']);

/** What may be used of what was found. Without a temperature the answer has failed. */
export function fillAnswer(
	answer: SourceAnswer,
	call: Call,
	ask: Ask,
	{ mapped: found, lastModified, sentAt }: Found
): void {
	const changedAt = isMadeTogether(call) ? lastModified : null;
	const issue = issueTime({ told: found.issuedAt, lastModified: changedAt, sentAt }, ask.now);
	const { hours, days, faults } = judge(call, ask, found, issue.at);
	const apart = sentAt && clocksApart(sentAt, ask.now);
	answer.faults.push(...(apart ? [apart] : []), ...faults);
	answer.station = found.station;
	answer.issuedAt = issue.at;
	answer.isIssueTold = issue.isTold;
	const nothing = nothingMapped(call.mapping, found, { hours, days }, ask.part);
	if (nothing) {
		if (!faults.some(({ code }) => EXPLAINS.has(code))) answer.faults.unshift(nothing);
		// What was of no use must come again in full.
		answer.validators = null;
		return;
	}
	answer.outcome = 'ok';
	answer.hours = hours;
	answer.days = days;
	answer.hasPrecipitation = hasFallen([...hours, ...days]);
}

/** A record grows at its end; what is to come is made at once, and what is past with it. */
function isMadeTogether({ part }: Call): boolean {
	return part !== 'history';
}
