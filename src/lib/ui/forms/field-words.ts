const WORDS: Readonly<Record<string, string>> = {
	name: 'Name',
	latitude: 'Latitude',
	longitude: 'Longitude',
	water: 'Kind of water',
	area: 'Area',
	meanDepth: 'Mean depth',
	elevation: 'Height above the sea',
	timeZone: 'Time zone',
	on: 'Day',
	place: 'Place',
	otherPlace: 'Place',
	siteKind: 'What it is',
	parent: 'Made on the ice of',
	firstOn: 'First cleared on',
	left: 'Snow left',
	over: 'New snow borne',
	width: 'Width of the track',
	kind: 'How it went',
	core: 'The core in the hand',
	by: 'Measured by',
	secondHand: 'Told by somebody else',
	remark: 'Remark',
	total: 'whole ice',
	clear: 'clear ice',
	white: 'white ice',
	slush: 'slush',
	snow: 'Snow',
	freeboard: 'water level',
	freezeUpOn: 'Froze over',
	freezeUpBy: 'At the latest',
	iceOutOn: 'Ice-out',
	refrozeOn: 'Froze again',
	density: 'Density',
	mass: 'Mass',
	use: 'Row of the charts',
	parked: 'Hours in one place',
	wetCracks: 'Wet cracks',
	trailer: 'What it draws',
	trailerApart: 'Kept behind',
	count: 'How many',
	spacing: 'From one to the next',
	address: 'Address',
	headers: 'Headers',
	key: 'Key',
	station: 'Station',
	attribution: 'Whose data they are',
	attributionUrl: 'A link for that',
	licence: 'Licence',
	perDay: 'Calls a day',
	kinds: 'What is sent',
	readingAfter: 'When a reading is due',
	checkedOn: 'Last looked at',
	order: 'order',
	spot: 'what it is',
	leg: 'way from the point before',
	emergency: 'Emergency number',
	party: 'Who goes',
	back: 'Back by',
	told: 'Who is told',
	'map.time.path': 'Where the times stand',
	'map.time.zoneName': 'The zone',
	'map.rows': 'Where the records stand',
	'map.air': 'Air temperature',
	'map.min': 'Lowest of the day',
	'map.max': 'Highest of the day',
	'map.precipitation': 'Precipitation',
	'map.snowfall': 'Snowfall',
	'map.landSnow': 'Snow depth on land',
	'map.wind': 'Wind speed'
};

/** What a field is called in a list of things to mend. @example fieldWords('holes.1.total_cm') // => 'Hole 2, whole ice' */
export function fieldWords(field: string): string | null {
	const point = /^points\.(\d+)\.?(.*)$/.exec(field);
	if (point)
		return `Point ${Number(point[1]) + 1}, ${(fieldWords(point[2] ?? '') ?? '').toLowerCase()}`;
	const hole = /^holes\.(\d+)\.?(.*)$/.exec(field);
	const stem = (hole?.[2] ?? field).replace(/_.*$/, '');
	const words = WORDS[stem] ?? WORDS[stem.replace(/\.[^.]*$/, '')] ?? null;
	if (!hole) return words;
	const number = `Hole ${Number(hole[1]) + 1}`;
	return words === null ? number : `${number}, ${words.toLowerCase()}`;
}
