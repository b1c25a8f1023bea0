export { TIME_FORMS } from '../../weather/source/schema.ts';
export type {
	Call,
	Mapping,
	PathGuess,
	SourceAnswer,
	SourcePart,
	WeatherSource
} from '../../weather/source/contract.ts';
