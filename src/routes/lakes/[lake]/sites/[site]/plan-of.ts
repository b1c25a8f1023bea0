import type { IsoDate } from '#lib/model/calendar.ts';
import { winterOf, winterSpan } from '#lib/model/calendar.ts';
import { trackCautions } from '#lib/model/tracks/track-cautions.ts';
import type { Context } from '#lib/server/context.ts';
import { planClearing } from '#lib/server/services/clearing-plans.ts';
import { groundIn } from '#lib/ui/format/ground.ts';
import { FormInput } from '#lib/ui/forms/form-input.ts';
import { readPlan } from '#lib/ui/forms/plan-input.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import { answerOf } from '#lib/ui/what-if/answer.ts';
import { wordsIn } from '#lib/ui/words.ts';

interface Asked {
	context: Context;
	lakeId: string;
	site: string;
	today: IsoDate;
	units: Units;
}

/** The plan that an address holds, worked out: an address is all that there is of it. */
export async function planOf(url: URL, { context, lakeId, site, today, units }: Asked) {
	if (!url.searchParams.has('firstOn')) return null;
	const input = new FormInput(Object.fromEntries(url.searchParams));
	const [, last] = winterSpan(winterOf(today));
	const typed = readPlan(input, { today, last });
	const { values, issues } = input.refusal;
	if (!typed) return { values, issues, answer: null };
	const words = wordsIn(units);
	const told = await planClearing(context, lakeId, { site, words }, typed.plan, typed.width_m);
	if (!told) return { values, issues, answer: null };
	const bound = told.cleared.days.find(({ on }) => on === typed.plan.from)?.bound ?? null;
	return {
		values,
		issues,
		answer: {
			...typed,
			asIs: answerOf(told.asIs),
			cleared: answerOf(told.cleared),
			/** Some load is to stay off today, whatever the dates say. */
			isWithheld: told.asIs.loads.some(({ status }) => status === 'withheld'),
			/** At one spot: what whoever clears on foot is held against, and a machine to less. */
			boundThen_m: bound?.effective_m ?? null,
			rules: trackCautions(told.clearing, groundIn(units), words)
		}
	};
}

export type PlanOf = NonNullable<Awaited<ReturnType<typeof planOf>>>;
export type PlanAnswer = NonNullable<PlanOf['answer']>;
