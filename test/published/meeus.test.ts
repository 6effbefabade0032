/** Worked examples of Meeus 1998, Astronomical Algorithms, 2nd ed., by their numbers in the book. */

import { expect, test } from "vitest";
import { angleBetweenDeg, fromAzimuthElevation } from "../../src/base/vector.ts";
import { refractionDeg } from "../../src/sky/atmosphere.ts";
import { semidiameterDeg } from "../../src/sky/ephemeris.ts";
import { sunAt } from "../../src/sky/sun.ts";
import { compare } from "../support/compare.ts";

const ARCSEC = 1 / 3600;
const hms = (hours: number, minutes: number, seconds: number): number =>
  15 * (hours + minutes / 60 + seconds / 3600);
const dms = (degrees: number, minutes: number, seconds: number): number =>
  degrees + minutes / 60 + seconds / 3600;

/**
 * The sun at 1992 October 13, 0h dynamical time (59 s of Delta T: Meeus 1998, table 10.A) from where it stands in the zenith, so that
 * parallax is nothing: latitude its declination, longitude from the equation of time of example 28.b (+13m42.7s).
 */
function sunOfExample25() {
  const deltaTS = 59;
  const longitudeDeg = 180 - (15 * (13 * 60 + 42.7)) / 3600 + (15 * deltaTS) / 3600;
  return sunAt(
    { latitudeDeg: -dms(7, 47, 2), longitudeDeg, heightM: 0 },
    new Date(Date.UTC(1992, 9, 13) - deltaTS * 1000),
  );
}

test("25.b: apparent right ascension and declination by the full theory (p. 165)", () => {
  const sun = sunOfExample25();
  compare("Meeus 25.b", [
    { name: "right ascension", found: sun.rightAscensionDeg, expected: hms(13, 13, 30.749) },
    { name: "declination", found: sun.declinationDeg, expected: -dms(7, 47, 1.74) },
  ]);
});

test("25.a: the low-accuracy sun agrees to the hundredth of a degree the book states for it (p. 163)", () => {
  const sun = sunOfExample25();
  compare("Meeus 25.a", [
    { name: "right ascension", found: sun.rightAscensionDeg, expected: 198.38083 },
    { name: "declination", found: sun.declinationDeg, expected: -7.78507 },
  ]);
  compare("Meeus 25.a distance", [
    { name: "R less the step to the surface", found: sun.distanceAu, expected: 0.99766 - 4.2635e-5 },
  ]);
});

test("25.b seen from elsewhere is moved by parallax, at most 8.8 arc seconds", () => {
  const at = new Date(Date.UTC(1992, 9, 13) - 59_000);
  for (const longitudeDeg of [-90, 0, 90, 176.8]) {
    const sun = sunAt({ latitudeDeg: 60, longitudeDeg, heightM: 0 }, at);
    const apartDeg = angleBetweenDeg(
      fromAzimuthElevation(sun.rightAscensionDeg, sun.declinationDeg),
      fromAzimuthElevation(hms(13, 13, 30.749), -dms(7, 47, 1.74)),
    );
    expect(apartDeg).toBeLessThan((8.8 + 1) * ARCSEC);
    expect(apartDeg).toBeGreaterThan(4 * ARCSEC);
  }
});

test("17.a: Arcturus and Spica stand 32 degrees 47' 35\" apart (p. 110)", () => {
  const arcturus = fromAzimuthElevation(hms(14, 15, 39.7), dms(19, 10, 57));
  const spica = fromAzimuthElevation(hms(13, 25, 11.6), -dms(11, 9, 41));
  compare("Meeus 17.a", [
    { name: "separation", found: angleBetweenDeg(arcturus, spica), expected: dms(32, 47, 35) },
    { name: "the other way round", found: angleBetweenDeg(spica, arcturus), expected: dms(32, 47, 35) },
  ]);
});

test("16.a read backwards: the true limbs are lifted to where they were seen (p. 107)", () => {
  // Seen: lower limb 30', upper limb from the true 33.246' by 24.618'. The book's two formulas agree within 4" (p. 106).
  const air = { pressureHPa: 1010, temperatureC: 10 };
  const lifted = (trueArcmin: number): number => trueArcmin + 60 * refractionDeg(trueArcmin / 60, air);
  compare("Meeus 16.a", [
    { name: "lower limb", found: lifted(1.246), expected: 30 },
    { name: "upper limb", found: lifted(33.246), expected: 33.246 + 24.618 },
  ]);
});

test('ch. 55: the semidiameter is 959.63" over the distance', () => {
  compare("Meeus semidiameter", [
    { name: "1 au", found: semidiameterDeg(1) / ARCSEC, expected: 959.63 },
    { name: "0.99766195 au", found: semidiameterDeg(0.99766195) / ARCSEC, expected: 961.879 },
  ]);
});
