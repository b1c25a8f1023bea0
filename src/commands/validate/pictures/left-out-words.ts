import type { LeftOutReason, Selection } from '../selection.ts';
import { counted } from './words.ts';

const WHY: Record<LeftOutReason, string> = {
	noThickness: 'without a thickness',
	doubtful: 'marked as doubtful',
	unknownLake: 'of a lake that is not listed',
	noFreezeUp: 'of a winter without a freeze-up',
	opened: 'of a winter in which the lake opened again',
	notAfterFreezeUp: 'of the day of freeze-up or earlier',
	weatherGaps: 'with too many days of no temperature before them',
	littleFrost: 'after hardly any frost'
};

/** How many readings are not scored, and why. */
export function leftOutWords(leftOut: Selection['leftOut']): string {
	const reasons = Object.entries(WHY) as [LeftOutReason, string][];
	const some = reasons.filter(([reason]) => leftOut[reason] > 0);
	if (some.length === 0) return 'no reading was left out';
	return `left out: ${some.map(([reason, why]) => `${counted(leftOut[reason], 'reading')} ${why}`).join(', ')}`;
}
