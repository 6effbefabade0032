/**
 * How far from the outside truth each quantity may be: one table for all tests.
 *
 * A row: [accepted mean, accepted maximum, unit, number of samples], the reason for the size, the source of the truth.
 * Errors are absolute; with the unit "of the value" they are shares of the expected value; "deg around" goes around
 * the circle. A printed value is good to half a unit of its last digit: that is what "printed digits" means below.
 */

export interface Tolerance {
  readonly mean: number;
  readonly max: number;
  readonly unit: string;
  readonly count: number;
  readonly reason: string;
  readonly source: string;
}

function row(size: readonly [number, number, string, number], reason: string, source: string): Tolerance {
  const [mean, max, unit, count] = size;
  return { mean, max, unit, count, reason, source };
}

const SPA = "Reda & Andreas 2003, NREL/TP-560-34302";
const IES_1984 = "IES Calculation Procedures Committee 1984";
const EXPLANATORY_SUPPLEMENT = "Explanatory Supplement to the Astronomical Almanac 1992";
const WMM2025 = "NOAA/NCEI and BGS 2024, World Magnetic Model 2025, test values";
const GEOGRAPHICLIB = "GeographicLib 2.1.2, GeoConvert (Karney)";
const ISO_15469 = "ISO 15469:2004 / CIE S 011";

export const TOLERANCES = {
  "SPA worked example": row(
    [0.0001, 0.0002, "deg", 5],
    "SPA states 0.0003 degree for itself; the ephemeris here is a truncated theory, good to about 1.2 arc seconds",
    `${SPA}, table A5.1`,
  ),
  "SPA worked refraction": row(
    [1e-6, 1e-6, "deg", 1],
    "printed digits, and 0.3 arc second of elevation",
    `${SPA}, A.5`,
  ),
  "SPA and ERFA points, elevation": row(
    [0.00012, 0.00033, "deg", 16],
    "0.8 arc second of ephemeris",
    `${SPA}; ERFA`,
  ),
  "SPA and ERFA points, across": row(
    [0.00012, 0.00033, "deg", 16],
    "0.8 arc second of ephemeris",
    `${SPA}; ERFA`,
  ),
  "SPA points, refracted elevation": row(
    [0.00012, 0.00022, "deg", 7],
    "as airless: the same refraction",
    SPA,
  ),
  "SPA distance": row(
    [6e-6, 1e-5, "au", 9],
    "truncated series; 1e-5 au is 0.01 arc second of semidiameter",
    SPA,
  ),
  "NREL rise and set": row(
    [0.9, 1, "s", 6],
    "8.8 arc seconds of parallax, which the report leaves out, take 0.6 to 0.9 s at 35 degrees",
    `${SPA}, table A2.1`,
  ),
  "Meeus 25.b": row([0.00015, 0.00025, "deg", 2], "1.2 arc seconds of ephemeris", "Meeus 1998, ex. 25.b"),
  "Meeus 25.a": row(
    [0.01, 0.01, "deg", 2],
    "the accuracy the book states for the method",
    "Meeus 1998, ex. 25.a",
  ),
  "Meeus 25.a distance": row([8e-5, 1e-4, "au", 1], "low-accuracy method", "Meeus 1998, ex. 25.a"),
  "Meeus 17.a": row([0.00014, 0.00014, "deg", 2], "printed digits", "Meeus 1998, ex. 17.a"),
  "Meeus 16.a": row(
    [0.067, 0.067, "arc min", 2],
    "the two formulas agree within 4 arc seconds",
    "Meeus 1998, p. 106",
  ),
  "Meeus semidiameter": row([5e-4, 5e-4, "arc sec", 2], "printed digits", "Meeus 1998, ch. 55"),
  "refraction by true altitude": row([3e-4, 5.1e-4, "arc min", 11], "printed digits", "Meeus 1998, eq. 16.4"),
  "refraction by apparent altitude": row(
    [0.05, 0.1, "arc min", 7],
    "the book says the two formulas are consistent within 4 arc seconds",
    "Meeus 1998, eq. 16.3",
  ),
  "ISO 2533 pressure": row([5e-4, 5.1e-4, "hPa", 8], "printed digits", "ISO 2533:1975"),
  "ISO 2533 temperature": row([1e-9, 1e-9, "K", 8], "exact in both", "ISO 2533:1975"),
  "Kasten-Young air mass": row([3e-5, 5.1e-5, "air masses", 15], "printed digits", "Kasten & Young 1989"),
  "practice, clear": row(
    [0.3, 0.7, "lx", 21],
    "printed digits (klx to three places; the sum adds two)",
    IES_1984,
  ),
  "practice, cloudy": row([0.3, 0.51, "lx", 7], "printed digits", IES_1984),
  "practice, partly cloudy": row([0.3, 0.51, "lx", 7], "printed digits; constants from memory", IES_1984),
  "practice, twice the half sky": row(
    [0.01, 0.016, "of the value", 12],
    "two fits of one practice",
    IES_1984,
  ),
  "practice, example day": row(
    [2e-4, 3e-4, "of the value", 2],
    "1/sin h against Kasten-Young at 48 degrees",
    IES_1984,
  ),
  "practice, orbital factor": row([0.001, 0.002, "factor", 12], "the practice's cosine is a fit", IES_1984),
  "turbid sky, Linke 5": row(
    [0.3, 0.51, "lx", 18],
    "printed digits",
    "Ineichen & Perez 2002; Perez et al. 1990",
  ),
  "turbid sky, Linke 6": row(
    [0.3, 0.51, "lx", 12],
    "printed digits",
    "Ineichen & Perez 2002; Perez et al. 1990",
  ),
  "turbid sky, vertical face": row([0.003, 0.0051, "EV", 6], "printed digits", "Ineichen & Perez 2002"),
  "Perez efficacy checks": row([4e-4, 5.1e-4, "lm/W", 4], "printed digits", "Perez et al. 1990, table 4"),
  "Perez table 4": row([1e-10, 1e-9, "lm/W", 96], "the same formula", "Perez et al. 1990, table 4"),
  "twilight polynomials": row([2e-5, 5e-5, "of the value", 22], "printed digits", EXPLANATORY_SUPPLEMENT),
  "clear dusk": row([2e-5, 5e-5, "of the value", 12], "printed digits", EXPLANATORY_SUPPLEMENT),
  "general tables of illuminance": row(
    [0.25, 0.5, "stops", 4],
    "round figures of general tables; at -12 degrees the night sky adds a quarter",
    "common practice, no source",
  ),
  "Circular 171 against polynomials": row(
    [0.25, 0.55, "stops", 19],
    "two models of one sky: 46 % apart at sunset, where the Circular's refraction ends",
    "USNO Circular 171 (1987)",
  ),
  "Circular 171 against clear daylight": row(
    [0.25, 0.7, "stops", 19],
    "the practice's clear sky at 5 degrees is brighter than either",
    "USNO Circular 171 (1987)",
  ),
  "CIE zenith share": row([0.0004, 0.0015, "of the value", 75], "12 x 24 point integration", ISO_15469),
  "CIE zenith fit": row([0.006, 0.025, "of the value", 18], "the fit's own quality", ISO_15469),
  "CIE single directions": row([3e-5, 6e-5, "ratio", 12], "printed digits", ISO_15469),
  "CIE horizon gradation": row([2e-5, 6e-5, "ratio", 15], "printed digits", ISO_15469),
  "CIE sky adds up": row(
    [0.0004, 0.0015, "of the value", 24],
    "12 x 24 point integration against 200 x 360",
    ISO_15469,
  ),
  "EV table": row([1e-5, 8e-5, "EV", 84], "printed digits (five)", "ISO 2720:1974"),
  "EV table, backwards": row([1e-5, 5e-5, "of the value", 84], "printed digits (five)", "ISO 2720:1974"),
  "f-numbers": row([3e-5, 5.1e-5, "f-number", 62], "printed digits", "ISO 517"),
  "shutter times": row(
    [0, 0, "s", 14],
    "powers of two are exact",
    "common practice, no source below 1/1000 s",
  ),
  "density in stops": row([3e-5, 5.1e-5, "stops", 17], "printed digits", "definition of optical density"),
  "density as transmittance": row(
    [1e-6, 5e-6, "of the value", 17],
    "printed digits",
    "definition of optical density",
  ),
  "guide, clear front": row(
    [0.35, 0.55, "stops", 7],
    "half a stop; at 60 degrees the high sun grazes an upright body and it reads 0.52 below",
    "ANSI PH2.7-1973 / 1986",
  ),
  "guide, clear side": row(
    [0.45, 0.5, "stops", 7],
    "half a stop: an average-scene rule",
    "ANSI PH2.7-1973 / 1986",
  ),
  "guide, clear back": row([0.6, 1, "stops", 14], "a stop: an average-scene rule", "ANSI PH2.7-1973 / 1986"),
  "guide, haze front": row([0.2, 0.5, "stops", 7], "half a stop about 14 to 14.5", "ANSI PH2.7-1973 / 1986"),
  "guide, clouds": row([0.6, 1, "stops", 14], "a stop: clouds differ by more", "ANSI PH2.7-1973 / 1986"),
  "black body luminance": row(
    [2e-4, 1e-3, "of the value", 36],
    "V at 10 nm instead of 1 nm",
    "Planck's law, CIE 1924 V",
  ),
  platinum: row([1e-4, 1e-4, "of the value", 2], "printed digits", "9th CGPM 1948"),
  "black body slope": row([0.04, 0.051, "", 4], "printed digits", "Planck's law, CIE 1924 V"),
  "grey radiator EV": row([0.03, 0.051, "EV", 4], "printed digits", "Planck's law, CIE 1924 V"),
  "cylinder mean": row(
    [5e-7, 1e-6, "of E / pi", 13],
    "printed digits, 2e5 strips",
    "Lambert's law, strip by strip",
  ),
  "cylinder lit share": row(
    [5e-6, 1e-5, "of the width", 13],
    "printed digits",
    "Lambert's law, strip by strip",
  ),
  "cylinder peak": row([3e-7, 6e-7, "of E / pi", 13], "printed digits", "Lambert's law, strip by strip"),
  "cylinder stops below front": row(
    [3e-4, 5.1e-4, "stops", 12],
    "printed digits",
    "Lambert's law, strip by strip",
  ),
  "worked cylinder": row([0.4, 0.6, "cd/m2", 4], "printed digits", "Lambert's law, worked by hand"),
  "cylinder by strips": row(
    [1e-6, 1e-4, "of the value", 250],
    "40,000 strips",
    "Lambert's law, strip by strip",
  ),
  "cylinder lit by strips": row(
    [2e-5, 5e-5, "of the width", 250],
    "40,000 strips",
    "Lambert's law, strip by strip",
  ),
  "sun image irradiance": row(
    [3e-4, 6e-4, "of the value", 20],
    "printed digits (four)",
    "radiometry of a lens",
  ),
  "sun image diameter": row([4e-4, 6e-4, "mm", 7], "printed digits", "Meeus 1998, ch. 55"),
  "sun image power": row(
    [6e-4, 2e-3, "W", 7],
    "printed digits; tangent for sine of the semidiameter is 2e-5",
    "radiometry of a lens",
  ),
  "EPSG Earth-fixed": row([4e-4, 6e-4, "m", 6], "printed digits", "IOGP Guidance Note 7-2, method 9602"),
  "EPSG topocentric": row([4e-4, 6e-4, "m", 3], "printed digits", "IOGP Guidance Note 7-2, method 9837"),
  "EPSG direction": row([5e-7, 6e-7, "deg", 2], "printed digits", "IOGP Guidance Note 7-2, worked on"),
  "EPSG range": row([1e-3, 1e-3, "m", 1], "printed digits", "IOGP Guidance Note 7-2, worked on"),
  "EPSG bearing and range": row(
    [2e-3, 3e-3, "m", 3],
    "5e-7 degree of printed azimuth at 229 km",
    "IOGP Guidance Note 7-2",
  ),
  "EPSG by east, north, up": row(
    [1e-3, 1e-3, "m", 3],
    "printed digits",
    "IOGP Guidance Note 7-2, method 9837",
  ),
  "Vincenty chord": row(
    [3e-4, 6e-4, "m", 2],
    "printed digits; one radius for the whole arc",
    "Vincenty 1975",
  ),
  "Vincenty azimuth": row(
    [3e-6, 4e-6, "deg", 2],
    "printed digits (0.005 arc second) and 0.005 arc second from normal section to geodesic",
    "Vincenty 1975",
  ),
  "Vincenty dip": row([1e-5, 2e-5, "deg", 2], "one radius for the whole arc", "Vincenty 1975, worked on"),
  "field of view": row([4e-5, 6e-5, "deg", 36], "printed digits", "geometry of a rectilinear lens"),
  hyperfocal: row([0.003, 0.006, "m", 3], "printed digits", "thin lens"),
  "Airy radius": row([4e-4, 6e-4, "um", 7], "printed digits", "Born & Wolf, 8.5.2"),
  "worked view, light": row([0.3, 0.51, "lx or cd/m2", 8], "written digits", "worked by hand"),
  "worked view, readings": row([0.004, 0.0051, "stops", 16], "written digits", "worked by hand"),
  "worked view, two things": row([0.004, 0.0051, "stops", 3], "written digits", "worked by hand"),
  "worked view, filters": row([0.004, 0.0051, "stops", 3], "written digits", "worked by hand"),
  "year against nrel-spa, airless": row(
    [0.0003, 0.0008, "deg", 1599],
    "truncated ephemeris; the plan needs 0.0015",
    `${SPA}, as nrel-spa 2`,
  ),
  "year against astronomia, airless": row(
    [0.0003, 0.0008, "deg", 1599],
    "truncated ephemeris",
    "Meeus 1998 with VSOP87, as astronomia 4",
  ),
  "year against nrel-spa, apparent": row(
    [0.0003, 0.0008, "deg", 801],
    "as airless: the same refraction",
    `${SPA}, as nrel-spa 2`,
  ),
  "SunTrack against sunAt": row(
    [1e-5, 4e-5, "deg", 3000],
    "hourly knots: 2.2e-5 degree of daily parallax, 1e-6 of yearly motion; the design asks for 0.001",
    "the ephemeris itself, called at each instant",
  ),
  "Meeus 47.a": row([0.0015, 0.0015, "deg", 1], "two shortened lunar theories", "Meeus 1998, ex. 47.a"),
  "Meeus 47.a distance": row([20, 20, "km", 1], "two shortened lunar theories", "Meeus 1998, ex. 47.a"),
  "Meeus 47.a parallax": row([6e-5, 6e-5, "deg", 1], "20 km of distance", "Meeus 1998, ex. 47.a"),
  "Meeus 48.a": row(
    [0.008, 0.008, "deg", 1],
    "the library leaves out the sun's aberration: 20.5 arc seconds",
    "Meeus 1998, ex. 48.a",
  ),
  "Meeus 48.a lit share": row(
    [1e-4, 1e-4, "of the disc", 1],
    "printed digits, and 0.006 degree of phase",
    "Meeus 1998, ex. 48.a",
  ),
  "years of moons against astronomia": row(
    [0.0012, 0.0035, "deg", 1104],
    "two shortened lunar theories (10 arc seconds stated for Meeus's); 7 s of Delta T in 2027 are 0.001 degree",
    "Meeus 1998, as astronomia 4",
  ),
  "moon phase against astronomia": row(
    [0.006, 0.009, "deg", 1104],
    "the library leaves out the sun's aberration: 20.5 arc seconds",
    "Meeus 1998, as astronomia 4",
  ),
  "moon parallax against astronomia": row(
    [5e-5, 2e-4, "deg", 1104],
    "two shortened lunar theories",
    "Meeus 1998, as astronomia 4",
  ),
  "MoonTrack against moonAt": row(
    [3e-6, 2e-5, "deg", 3000],
    "cubic through knots six hours apart",
    "the ephemeris itself, called at each instant",
  ),
  "full moon polynomials": row([2e-5, 5e-5, "of the value", 10], "printed digits", EXPLANATORY_SUPPLEMENT),
  "moon phase factors": row([2e-5, 5e-5, "of the value", 7], "printed digits", EXPLANATORY_SUPPLEMENT),
  "night without a moon": row(
    [0.01, 0.01, "of the value", 4],
    "what is left of the sun",
    EXPLANATORY_SUPPLEMENT,
  ),
  "Earth's shadow, sun's centre": row([0.003, 0.0051, "km", 14], "printed digits", "geometry of a sphere"),
  "Earth's shadow, first light": row(
    [0.003, 0.0051, "km", 14],
    "printed digits; 2.4849 stands there as 2.49",
    "geometry of a sphere",
  ),
  "largest depression in the light": row([3e-4, 5.1e-4, "deg", 8], "printed digits", "geometry of a sphere"),
  "sun downrange": row([5.1e-5, 5.1e-5, "deg", 1], "printed digits", "geometry of a sphere"),
  "lamp wholly in front, by elements": row(
    [0.0005, 0.001, "stops", 40],
    "240 by 240 elements",
    "Lambert's law, added up",
  ),
  "lamp in part in front, by elements": row(
    [0.04, 0.09, "stops", 49],
    "one distance and one cosine for the whole part in front",
    "Lambert's law, added up",
  ),
  "lamp near by against a turned disc": row(
    [0.3, 0.6, "stops", 12],
    "another shape",
    "Lambert's law, added up",
  ),
  "lamp farther off against a turned disc": row(
    [0.1, 0.25, "stops", 16],
    "another shape",
    "Lambert's law, added up",
  ),
  "lamp near by against a ball": row([0.8, 1.1, "stops", 12], "another shape", "Lambert's law, added up"),
  "lamp farther off against a ball": row([0.2, 0.4, "stops", 16], "another shape", "Lambert's law, added up"),
  "length of a wall's shadow": row([0.001, 0.001, "m", 6], "a body of 0.05 m", "h / tan(elevation)"),
  "length of a mast's shadow": row([0.001, 0.001, "m", 6], "a body of 0.05 m", "h / tan(elevation)"),
  "height of a shadow on the body": row(
    [0.001, 0.004, "m", 18],
    "the facing strip's middle on a body of 0.05 m",
    "h - d tan(elevation)",
  ),
  "shadow under the SPA sun": row(
    [0.025, 0.025, "m", 2],
    "the strip next to the facet that faces the sun: 1.5 m (1 - cos 11.25) tan(elevation) = 0.024 m",
    `${SPA}, table A5.1, worked on`,
  ),
  "constant acceleration": row(
    [1e-4, 2e-4, "of the value", 12],
    "gravity is 1.7e-4 weaker 540 m up",
    "s = a t^2 / 2",
  ),
  "energy of a climb": row(
    [1e-6, 1e-6, "of the value", 3],
    "the slope at the last row of a curve through points",
    "conservation of energy",
  ),
  "drift of a climb": row(
    [1e-3, 2e-3, "of the value", 3],
    "third order: gravity of the height, and the thrust that follows the vertical below",
    "Coriolis, to first order",
  ),
  "drift of a level flight": row(
    [5e-4, 1e-3, "of the value", 6],
    "second order: the way bends, and the thrust follows the horizontal below",
    "Coriolis, to first order",
  ),
  "level thrust on a sphere": row(
    [1e-4, 2e-4, "of the value", 3],
    "the next order: the square of 26 km around the Earth",
    "geometry of a sphere, to first order",
  ),
  "motion across a level camera": row(
    [1e-3, 2e-3, "of the value", 3],
    "the pad's vertical against the camera's, 20 km off",
    "f sqrt(2 a h) D / (D^2 + h^2)",
  ),
  "path through a parabola": row([1e-12, 1e-11, "m or m/s", 28], "exact but for rounding", "the parabola"),
  "rocket equation, speed": row(
    [5e-5, 1e-4, "of the value", 4],
    "the slope at the last row of a curve through points half a second apart",
    "Tsiolkovsky 1903",
  ),
  "rocket equation, way": row(
    [1e-9, 1e-9, "of the value", 4],
    "steps of 0.1 s, fourth order",
    "Tsiolkovsky 1903",
  ),
  "published geodesics": row(
    [0.003, 0.006, "m", 4],
    "printed digits: 5e-8 degree of azimuth times up to the Earth's radius, and 0.5 mm",
    "Vincenty 1975; Karney 2013",
  ),
  "equator downrange, range": row([1e-6, 1e-6, "m", 3], "exact but for rounding", "a circle"),
  "equator downrange, elevation": row([1e-10, 1e-10, "deg", 3], "exact but for rounding", "a circle"),
  "downrange by steps": row([1e-5, 1e-4, "m", 6], "2000 steps of fourth order", "Clairaut's equations"),
  "elevation on a sphere": row(
    [0.01, 0.02, "deg", 12],
    "one radius for an Earth that is flattened by 1/298",
    "geometry of a sphere",
  ),
  "level flight": row(
    [0.01, 0.02, "deg", 2],
    "one radius for the whole arc: 0.3 % of 3.6 degrees",
    "geometry of a sphere",
  ),
  "level flight, place": row([0.001, 0.001, "m", 2], "exact at a row", "the table itself"),
  "standard air by layers": row(
    [1e-5, 4.6e-5, "of the value", 7],
    "printed digits (five)",
    "US Standard Atmosphere 1976, from memory above 11 km",
  ),
  "tilted cylinder, mean": row(
    [1e-7, 1e-6, "of the value", 60],
    "100,000 facets",
    "Lambert's law, facet by facet",
  ),
  "tilted cylinder, brightest": row(
    [3e-5, 3e-4, "of the value", 60],
    "the last of 100,000 facets stands inside the edge",
    "Lambert's law, facet by facet",
  ),
  "tilted cylinder, darkest": row(
    [3e-5, 3e-4, "of the value", 60],
    "the last of 100,000 facets stands inside the edge",
    "Lambert's law, facet by facet",
  ),
  "tilted cylinder, lit width": row(
    [2e-5, 5e-5, "of the width", 60],
    "100,000 facets",
    "Lambert's law, facet by facet",
  ),
  "air along a line": row(
    [1e-3, 5e-3, "of the value", 120],
    "16 points; the layers of the air join with a kink",
    "the same air, added up in 20,000 pieces",
  ),
  "constructed crossing, T+": row(
    [5e-5, 2e-4, "s", 6],
    "T-0 in whole milliseconds, a minimum sought to 0.1 ms, the sun straight between knots (4e-6 degree)",
    "geometric construction on the ellipsoid",
  ),
  "constructed crossing, height": row(
    [0.02, 0.1, "m", 6],
    "0.1 ms of a climb at up to 1.1 km/s",
    "geometric construction on the ellipsoid",
  ),
  "constructed crossing, off the axis": row(
    [3e-4, 1e-3, "deg", 6],
    "the pad's vertical lies in the camera's vertical plane on a sphere only",
    "geometric construction on the ellipsoid",
  ),
  "constructed crossing on a sphere": row(
    [5e-5, 2e-4, "s", 6],
    "as on the ellipsoid: one radius for the arc costs less",
    "geometric construction, sine rule",
  ),
  "constructed crossing, rim": row(
    [5e-4, 1e-3, "s", 12],
    "ends are sought to 0.5 ms",
    "geometric construction on the ellipsoid",
  ),
  "WMM2025 declination": row([0.001, 0.005, "deg", 12], "printed digits", WMM2025),
  "WMM2025 horizontal intensity": row([0.01, 0.05, "nT", 12], "printed digits", WMM2025),
  "WMM2025 anywhere, across the field": row(
    [1.2, 4, "nT", 120],
    "a declination is cut to 0.01 degree: half of that across up to 42,000 nT is 3.7 nT",
    "the coefficients of WMM2025 in the definition of the potential",
  ),
  "UTM to a place": row([1e-6, 2e-6, "m", 80], "coordinates printed to a micrometre", GEOGRAPHICLIB),
  "MGRS to a place": row(
    [1e-8, 1e-7, "m", 80],
    "5 nm of the projection, 1e-14 degree printed",
    GEOGRAPHICLIB,
  ),
} as const satisfies Record<string, Tolerance>;

export type Quantity = keyof typeof TOLERANCES;
