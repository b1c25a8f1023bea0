/** What vapour adds to the conduction of snow at 0 °C, as a share of the rest. */
const VAPOUR_FRACTION = 0.5; // computed: up to so much in light snow [Fourteau2021] [R]
/** How fast the vapour that saturates air grows with temperature: its slope over ice, 0 to -20 °C [C]. */
const VAPOUR_1_K = 0.075;
/** Mean temperature of the snow that the law of conduction was measured on [Sturm1997] [M-med]. */
const LAW_degC = -14.6;

/**
 * How much better snow on ice conducts under air of a temperature than the law for land snow says.
 *
 *   (1 + v exp(b T_s))/(1 + v exp(b T_law)),  T_s = T_air/2
 *
 * Vapour carries latent heat from the warm side of every pore to the cold one, the more the warmer the
 * snow. The snow lies between ice near 0 °C and the air, and is half as cold as that. So a mild frost
 * makes more ice for its degree-days than a hard one. @example snowWarmth(-29.2) // => 1
 */
export function snowWarmth(air_degC: number): number {
	return withVapour(Math.min(0, air_degC) / 2) / AS_LAW;
}

function withVapour(snow_degC: number): number {
	return 1 + VAPOUR_FRACTION * Math.exp(VAPOUR_1_K * snow_degC);
}

const AS_LAW = withVapour(LAW_degC);
