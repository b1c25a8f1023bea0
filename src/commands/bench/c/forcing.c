/* Constants, the sun and what a day's weather does: see season.c. */
#include <math.h>

#define STEPS 4

static const double PI = 3.14159265358979323846;
static const double WATER_kg_m3 = 1000, CLEAR_ICE_kg_m3 = 916, WHITE_ICE_kg_m3 = 880;
static const double CLEAR_ICE_W_mK = 2.24, WHITE_ICE_W_mK = 2.0, FUSION_J_kg = 3.34e5;
static const double CLEAR_ICE_FUSION_J_m3 = 916 * 3.34e5, DAY_s = 86400, SOLAR_CONSTANT_W_m2 = 1361;

struct weather {
	double day_of_year, month, air_degC, precipitation_kg_m2, snowfall_kg_m2;
};

/* The weather of a day or of a step. */
struct forcing {
	double duration_d, freezing_degCd, thawing_degCd, warm, snowfall_kg_m2, fresh_kg_m3;
	double rain_kg_m2, sun_W_m2, air_degC;
};

static double declination(double day) { return 0.409 * sin(2 * PI * day / 365 - 1.39); }

static double clear_sky_W_m2(double latitude, double day, double elevation_m)
{
	double phi = latitude * PI / 180, delta = declination(day);
	double omega = acos(fmin(1, fmax(-1, -tan(phi) * tan(delta))));
	double geometry = omega * sin(phi) * sin(delta) + cos(phi) * cos(delta) * sin(omega);
	double distance = 1 + 0.033 * cos(2 * PI * day / 365);
	double outside_W_m2 = SOLAR_CONSTANT_W_m2 / PI * distance * fmax(0, geometry);
	return (0.75 + 2e-5 * fmax(0, elevation_m)) * outside_W_m2;
}

static double usual_range_K(double latitude, double month)
{
	double height = cos(latitude * PI / 180 - declination(30.4 * month - 15));
	return 6 + 7 * fmax(0, height);
}

static struct forcing day_forcing(const struct weather *day, double latitude, double elevation_m)
{
	struct forcing f = {.duration_d = 1};
	double mean = day->air_degC, amplitude = usual_range_K(latitude, day->month) / 2;
	if (mean >= amplitude) {
		f.thawing_degCd = mean;
		f.warm = mean > 0;
	} else if (mean <= -amplitude) {
		f.freezing_degCd = -mean;
	} else {
		double theta = acos(-mean / amplitude);
		f.thawing_degCd = (amplitude * sin(theta) + mean * theta) / PI;
		f.freezing_degCd = f.thawing_degCd - mean;
		f.warm = theta / PI;
	}
	f.snowfall_kg_m2 = day->snowfall_kg_m2;
	f.rain_kg_m2 = fmax(0, day->precipitation_kg_m2 - day->snowfall_kg_m2);
	f.fresh_kg_m3 = 67.92 + 51.25 * exp(fmin(0, mean) / 2.59);
	f.air_degC = mean;
	f.sun_W_m2 = clear_sky_W_m2(latitude, day->day_of_year, elevation_m);
	return f;
}
