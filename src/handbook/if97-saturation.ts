/**
 * Where water boils: IAPWS Industrial Formulation 1997, region 4, both ways in closed form. From 273.15 K to the critical point; outside
 * it nothing is given. Pressures here are absolute; `boilingPoint` takes a gauge's reading.
 */
import { cite } from './sources.ts';

export const SATURATION_SOURCE: string = cite('if97', 'region 4, equations 30 and 31');

/** MPa absolute at `temperature` K. Nothing under 273.15 K or over 647.096 K. */
export function saturationPressure(temperature: number): number | undefined {
  if (!(temperature >= LEAST_T && temperature <= CRITICAL_T)) return undefined;
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
  const t = temperature + n9 / (temperature - n10);
  const a = t ** 2 + n1 * t + n2;
  const b = n3 * t ** 2 + n4 * t + n5;
  const c = n6 * t ** 2 + n7 * t + n8;
  return ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4;
}

/** Kelvin at `pressure` MPa absolute. Nothing under 611.213 Pa or over 22.064 MPa. */
export function saturationTemperature(pressure: number): number | undefined {
  if (!(pressure >= LEAST_P && pressure <= CRITICAL_P)) return undefined;
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N;
  const beta = pressure ** 0.25;
  const e = beta ** 2 + n3 * beta + n6;
  const f = n1 * beta ** 2 + n4 * beta + n7;
  const g = n2 * beta ** 2 + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2;
}

/** Degrees Celsius of saturated steam at `gauge` bar above `atmosphere` bar. Nothing outside the range of region 4. */
export function boilingPoint(gauge: number, atmosphere: number = STANDARD_ATMOSPHERE): number | undefined {
  const kelvin = saturationTemperature((gauge + atmosphere) / 10);
  return kelvin === undefined ? undefined : kelvin - ZERO_CELSIUS;
}

/** bar, exact by definition */
export const STANDARD_ATMOSPHERE = 1.01325;
export const ZERO_CELSIUS = 273.15;

const LEAST_T = 273.15;
const CRITICAL_T = 647.096;
/** MPa */
const LEAST_P = 611.213e-6;
const CRITICAL_P = 22.064;

/** Table 34. */
const N = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353, -4823.2657361591, 405113.40542057,
  -0.23855557567849, 650.17534844798,
] as const;
