import type { AppliedRule } from '../forecast.ts';

/** What is published on warmth and strength, as reported in ice-science 4.2 to 4.4. */
export const TWICE_RULE: AppliedRule = {
	code: 'warmSpellDoubles',
	text: 'Above freezing for six of the last 24 hours: twice the thickness is asked for.',
	source: 'Minnesota DNR 2013, as reported'
};

export const STAY_OFF_RULE: AppliedRule = {
	code: 'warmSpellCloses',
	text: 'Above freezing for 24 hours or more: stay off. After a few days of it no load is carried.',
	source: 'Minnesota DNR 2013, as reported; U.S. Army and Air Force TM 5-852-1'
};

export const ROTTEN_RULE: AppliedRule = {
	code: 'rotten',
	text: 'Rotten ice carries a fraction of what sound ice of its thickness does; with one part in twenty melted inside half the strength is gone.',
	source: 'Ashton, Encyclopaedia Britannica; the half after Bulatov 1970, from memory'
};

export const SUN_RULE: AppliedRule = {
	code: 'sunOnBareIce',
	text: 'Sunshine inside the ice melts it between its grains, apart from any thinning.',
	source: 'Ashton, Encyclopaedia Britannica; the limits of sun and snow are our choice'
};

export const MILD_RULE: AppliedRule = {
	code: 'mild',
	text: 'Weather above zero is taken to cost a quarter of what ice carries. That is told here, and not counted in any load.',
	source: 'SMHI (Sweden), guidance for skaters'
};
