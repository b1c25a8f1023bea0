/** The rows of the charts in words. */
export const USE_WORDS: Record<string, string> = {
	onFoot: 'On foot, one person',
	group: 'On foot, a group',
	snowmobile: 'Snowmobile',
	atv: 'ATV or side-by-side',
	car: 'Car or small SUV',
	lightTruck: 'Light or medium truck',
	heavyTruck: 'Heavy-duty truck',
	truckWithShelter: 'Truck with a wheeled shelter, parked'
};
