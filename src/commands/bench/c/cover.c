/* The state, and the snow on the ice with the slush it makes: see season.c. */
#include "forcing.c"

struct parameters {
	double exchange_W_m2K, waterHeat_W_m2, snowKeptFraction, snowConductivityRatio;
	double settledSnow_kg_m3, settling_h, settlingCold_1_K, wetting_kg_m2degCd, wetSnow_kg_m3;
	double snowMelt_kg_m2degCd, refreezeFraction, soakedFraction, slushMatrix_kg_m3;
	double snowSpreadFraction, flooding_d, iceMelt_m_degCd, cloudFraction;
	double snowAlbedo, whiteAlbedo, clearAlbedo, insideFraction, belowFraction;
	double skyLoss_W_m2, thinSnowFraction, thinSnowRatio, breakUp_m;
};

struct site {
	double clear_m, white_m, slush_m, snow_m, density_kg_m3, liquid, crust_m, water_J_m2;
};

/* What a step's length and its air alone decide. */
struct rates {
	double unsettled, arrived, snow_warmth;
};

static double with_vapour(double snow_degC) { return 1 + 0.5 * exp(0.075 * snow_degC); }

static struct rates step_rates(double air_degC, double duration_d, const struct parameters *p)
{
	double slowing = exp(p->settlingCold_1_K * fmax(0, -air_degC));
	return (struct rates){.unsettled = exp(-duration_d * 24 / (p->settling_h * slowing)),
						  .arrived = 1 - exp(-duration_d / p->flooding_d),
						  .snow_warmth = with_vapour(fmin(0, air_degC) / 2) / with_vapour(-14.6)};
}

static double snow_kg_m2(const struct site *s) { return s->snow_m * s->density_kg_m3; }

static void add_snow(struct site *s, double fall_kg_m2, double fresh_kg_m3)
{
	if (fall_kg_m2 <= 0) return;
	double mass = snow_kg_m2(s) + fall_kg_m2;
	s->snow_m += fall_kg_m2 / fresh_kg_m3;
	s->density_kg_m3 = mass / s->snow_m;
}

static void settle(struct site *s, double unsettled, const struct parameters *p)
{
	if (s->snow_m <= 0 || s->density_kg_m3 >= p->settledSnow_kg_m3) return;
	double mass = snow_kg_m2(s);
	s->density_kg_m3 = p->settledSnow_kg_m3 - (p->settledSnow_kg_m3 - s->density_kg_m3) * unsettled;
	s->snow_m = mass / s->density_kg_m3;
}

static void pack(struct site *s, double part_kg_m2, double packed_kg_m3)
{
	if (part_kg_m2 <= 0 || s->snow_m <= 0 || s->density_kg_m3 >= packed_kg_m3) return;
	double mass = snow_kg_m2(s), share = fmin(1, part_kg_m2 / mass);
	s->density_kg_m3 += (packed_kg_m3 - s->density_kg_m3) * share;
	s->snow_m = mass / s->density_kg_m3;
}

static void snow_fall(struct site *s, const struct forcing *f, const struct rates *r,
					  const struct parameters *p)
{
	double half_kg_m2 = f->snowfall_kg_m2 * p->snowKeptFraction / 2;
	add_snow(s, half_kg_m2, f->fresh_kg_m3);
	settle(s, r->unsettled, p);
	pack(s, p->wetting_kg_m2degCd * f->thawing_degCd, p->wetSnow_kg_m3);
	add_snow(s, half_kg_m2, f->fresh_kg_m3);
}

static void remove_snow(struct site *s, double mass_kg_m2)
{
	double left = snow_kg_m2(s) - mass_kg_m2;
	s->snow_m = left <= 1e-9 ? 0 : left / s->density_kg_m3;
}

static void to_slush(struct site *s, double slush_m, const struct parameters *p)
{
	double made_m = fmin(slush_m, snow_kg_m2(s) / p->slushMatrix_kg_m3);
	remove_snow(s, made_m * p->slushMatrix_kg_m3);
	s->slush_m += made_m;
}

static void soak(struct site *s, double water_kg_m2, const struct parameters *p)
{
	if (water_kg_m2 <= 0 || s->snow_m <= 0) return;
	double phi = 1 - p->slushMatrix_kg_m3 / CLEAR_ICE_kg_m3;
	to_slush(s, p->soakedFraction * water_kg_m2 / (WATER_kg_m3 * phi), p);
}

static double melt_snow(struct site *s, const struct forcing *f, const struct parameters *p)
{
	double lasting = f->thawing_degCd - p->refreezeFraction * f->freezing_degCd;
	if (lasting <= 0) return 0;
	if (s->snow_m <= 0) return lasting;
	double melt_kg_m2 = fmin(snow_kg_m2(s), p->snowMelt_kg_m2degCd * lasting);
	remove_snow(s, melt_kg_m2);
	soak(s, melt_kg_m2, p);
	return lasting - melt_kg_m2 / p->snowMelt_kg_m2degCd;
}

static double slush_kg_m3(const struct parameters *p)
{
	return p->slushMatrix_kg_m3 + (1 - p->slushMatrix_kg_m3 / CLEAR_ICE_kg_m3) * WATER_kg_m3;
}

static void flood(struct site *s, const struct rates *r, const struct parameters *p)
{
	if (s->snow_m <= 0) return;
	double load = snow_kg_m2(s);
	double buoyancy = s->clear_m * (WATER_kg_m3 - CLEAR_ICE_kg_m3) +
					  s->white_m * (WATER_kg_m3 - WHITE_ICE_kg_m3) +
					  s->slush_m * (WATER_kg_m3 - slush_kg_m3(p));
	double spread = p->snowSpreadFraction * load, excess = load - buoyancy;
	if (spread <= 1e-9)
		excess = fmax(0, excess);
	else if (excess / spread <= 30)
		excess = spread * log1p(exp(excess / spread));
	double made_m = fmin(excess * CLEAR_ICE_kg_m3 / WATER_kg_m3, excess) / p->slushMatrix_kg_m3;
	to_slush(s, made_m * r->arrived, p);
}
