import { WEAK_SPOT_KINDS, type WeakSpotKind } from '#lib/model/places/weak-spot.ts';

export const KIND_WORDS: Record<WeakSpotKind, string> = {
	current: 'Current',
	inletOutlet: 'Inlet or outlet',
	narrows: 'Narrows',
	spring: 'Spring',
	bogOrWeeds: 'Bog or weeds',
	pressureRidge: 'Pressure ridge',
	dockOrBubbler: 'Dock or bubbler',
	landing: 'Landing',
	rocks: 'Rocks',
	crack: 'Crack',
	drift: 'Snowdrift',
	brokeThrough: 'Broke through here'
};

/** For a list to choose from. */
export const KIND_OPTIONS = WEAK_SPOT_KINDS.map((kind) => ({
	value: kind,
	label: KIND_WORDS[kind]
}));
