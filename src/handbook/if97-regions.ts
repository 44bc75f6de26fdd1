/**
 * Water and steam by IAPWS Industrial Formulation 1997, regions 1 and 2 (to 623.15 K): volume, enthalpy, energy, entropy, heat, speed of
 * sound from temperature (K) and pressure (MPa, absolute), and both sides of the boiling line. Regions 3 and 5 are not built: states
 * there give nothing.
 */
import { saturationPressure, saturationTemperature } from './if97-saturation.ts';
import { cite } from './sources.ts';

export const STATE_SOURCE: string = cite('if97', 'regions 1 and 2, equations 7, 16 and 17');

export type WaterState = {
  /** m3/kg */
  readonly volume: number;
  /** kJ/kg */
  readonly enthalpy: number;
  readonly energy: number;
  /** kJ/(kg K) */
  readonly entropy: number;
  /** At constant pressure, kJ/(kg K). */
  readonly heat: number;
  /** m/s */
  readonly sound: number;
};
export type Saturated = {
  readonly temperature: number;
  readonly water: WaterState;
  readonly steam: WaterState /** kJ/kg */;
  readonly latent: number;
};

/** Liquid: 273.15 to 623.15 K, from boiling pressure to 100 MPa. */
export function water(temperature: number, pressure: number): WaterState | undefined {
  const boils = saturationPressure(temperature);
  if (boils === undefined || temperature > REGION_T || !(pressure >= boils * (1 - SLACK) && pressure <= GREATEST_P)) return undefined;
  return liquid(temperature, pressure);
}

/** Steam: 273.15 K to 1073.15 K, up to boiling pressure; above 623.15 K up to the border of region 3 (to 863.15 K), then 100 MPa. */
export function steam(temperature: number, pressure: number): WaterState | undefined {
  const most = greatestOfSteam(temperature);
  if (most === undefined || !(pressure > 0 && pressure <= most * (1 + SLACK))) return undefined;
  return vapour(temperature, pressure);
}

/** Both sides of the boiling line at `pressure` MPa absolute. Nothing under 611.213 Pa or over 16.529 MPa, where region 3 begins. */
export function saturated(pressure: number): Saturated | undefined {
  const temperature = saturationTemperature(pressure);
  if (temperature === undefined || temperature > REGION_T) return undefined;
  const [below, above] = [liquid(temperature, pressure), vapour(temperature, pressure)];
  return { temperature, water: below, steam: above, latent: above.enthalpy - below.enthalpy };
}

/** MPa at the border between regions 2 and 3, equation 5. */
export function borderOfSteam(temperature: number): number {
  const [n1, n2, n3] = BORDER;
  return n1 + n2 * temperature + n3 * temperature ** 2;
}

/** kJ/(kg K) */
const R = 0.461526;
const REGION_T = 623.15;
const GREATEST_P = 100;
const BORDER_T = 863.15;
const GREATEST_T = 1073.15;
/** A state asked for on the boiling line itself may miss it by a rounding. */
const SLACK = 1e-9;

/** Region 2 ends at the boiling line, then at the parabola of equation 5, then at 100 MPa. */
function greatestOfSteam(temperature: number): number | undefined {
  if (temperature <= REGION_T) return saturationPressure(temperature);
  if (temperature <= BORDER_T) return borderOfSteam(temperature);
  return temperature <= GREATEST_T ? GREATEST_P : undefined;
}
/** Table 1, equation 5. */
const BORDER = [0.34805185628969e3, -0.11671859879975e1, 0.10192970039326e-2] as const;

type Term = readonly [i: number, j: number, n: number];
/** Gibbs energy over RT and its derivatives by pi and tau. */
type Gibbs = { readonly g: number; readonly p: number; readonly pp: number; readonly t: number; readonly tt: number; readonly pt: number };

function liquid(temperature: number, pressure: number): WaterState {
  const [pi, tau] = [pressure / 16.53, 1386 / temperature];
  const [a, b] = [7.1 - pi, tau - 1.222];
  // pi enters as 7.1 - pi, so each derivative by pi changes sign
  const { g, p, pp, t, tt, pt } = sum(REGION_1, a, b);
  return state({ g, p: -p, pp, t, tt, pt: -pt }, pi, tau, temperature, pressure);
}

function vapour(temperature: number, pressure: number): WaterState {
  const [pi, tau] = [pressure, 540 / temperature];
  const rest = sum(RESIDUAL_2, pi, tau - 0.5);
  const ideal = { g: Math.log(pi), p: 1 / pi, pp: -1 / pi ** 2, t: 0, tt: 0 };
  for (const [j, n] of IDEAL_2) {
    ideal.g += n * tau ** j;
    ideal.t += n * j * tau ** (j - 1);
    ideal.tt += n * j * (j - 1) * tau ** (j - 2);
  }
  const both = {
    g: ideal.g + rest.g,
    p: ideal.p + rest.p,
    pp: ideal.pp + rest.pp,
    t: ideal.t + rest.t,
    tt: ideal.tt + rest.tt,
    pt: rest.pt,
  };
  return state(both, pi, tau, temperature, pressure);
}

/** Sum of n a^i b^j and its derivatives by a and b. */
function sum(terms: readonly Term[], a: number, b: number): Gibbs {
  const out = { g: 0, p: 0, pp: 0, t: 0, tt: 0, pt: 0 };
  for (const [i, j, n] of terms) {
    const [x, y] = [a ** i, b ** j];
    out.g += n * x * y;
    out.p += n * i * a ** (i - 1) * y;
    out.pp += n * i * (i - 1) * a ** (i - 2) * y;
    out.t += n * x * j * b ** (j - 1);
    out.tt += n * x * j * (j - 1) * b ** (j - 2);
    out.pt += n * i * a ** (i - 1) * j * b ** (j - 1);
  }
  return out;
}

/** Relations of tables 3 and 12; MPa m3 are thousand kJ. */
function state({ g, p, pp, t, tt, pt }: Gibbs, pi: number, tau: number, temperature: number, pressure: number): WaterState {
  const rt = R * temperature;
  const drift = p - tau * pt;
  return {
    volume: (pi * p * rt) / pressure / 1000,
    enthalpy: tau * t * rt,
    energy: (tau * t - pi * p) * rt,
    entropy: (tau * t - g) * R,
    heat: -(tau ** 2) * tt * R,
    sound: Math.sqrt((p ** 2 / (drift ** 2 / (tau ** 2 * tt) - pp)) * rt * 1000),
  };
}

/** Table 2. */
const REGION_1: readonly Term[] = [
  [0, -2, 0.14632971213167],
  [0, -1, -0.84548187169114],
  [0, 0, -3.756360367204],
  [0, 1, 3.3855169168385],
  [0, 2, -0.95791963387872],
  [0, 3, 0.15772038513228],
  [0, 4, -0.016616417199501],
  [0, 5, 0.00081214629983568],
  [1, -9, 0.00028319080123804],
  [1, -7, -0.00060706301565874],
  [1, -1, -0.018990068218419],
  [1, 0, -0.032529748770505],
  [1, 1, -0.021841717175414],
  [1, 3, -5.283835796993e-5],
  [2, -3, -0.00047184321073267],
  [2, 0, -0.00030001780793026],
  [2, 1, 0.000047661393906987],
  [2, 3, -4.4141845330846e-6],
  [2, 17, -7.2694996297594e-16],
  [3, -4, -3.1679644845054e-5],
  [3, 0, -2.8270797985312e-6],
  [3, 6, -8.5205128120103e-10],
  [4, -5, -0.0000022425281908],
  [4, -2, -6.5171222895601e-7],
  [4, 10, -1.4341729937924e-13],
  [5, -8, -4.0516996860117e-7],
  [8, -11, -1.2734301741641e-9],
  [8, -6, -1.7424871230634e-10],
  [21, -29, -6.8762131295531e-19],
  [23, -31, 1.4478307828521e-20],
  [29, -38, 2.6335781662795e-23],
  [30, -39, -1.1947622640071e-23],
  [31, -40, 1.8228094581404e-24],
  [32, -41, -9.3537087292458e-26],
];
/** Table 10: J, n. */
const IDEAL_2: readonly (readonly [j: number, n: number])[] = [
  [0, -0.96927686500217e1],
  [1, 0.10086655968018e2],
  [-5, -0.5608791128302e-2],
  [-4, 0.71452738081455e-1],
  [-3, -0.40710498223928],
  [-2, 0.14240819171444e1],
  [-1, -0.4383951131945e1],
  [2, -0.28408632460772],
  [3, 0.21268463753307e-1],
];
/** Table 11. */
const RESIDUAL_2: readonly Term[] = [
  [1, 0, -0.0017731742473213],
  [1, 1, -0.017834862292358],
  [1, 2, -0.045996013696365],
  [1, 3, -0.057581259083432],
  [1, 6, -0.05032527872793],
  [2, 1, -0.000033032641670203],
  [2, 2, -0.00018948987516315],
  [2, 4, -0.0039392777243355],
  [2, 7, -0.043797295650573],
  [2, 36, -0.000026674547914087],
  [3, 0, 2.0481737692309e-8],
  [3, 1, 4.3870667284435e-7],
  [3, 3, -0.00003227767723857],
  [3, 6, -0.0015033924542148],
  [3, 35, -0.040668253562649],
  [4, 1, -7.8847309559367e-10],
  [4, 2, 1.2790717852285e-8],
  [4, 3, 4.8225372718507e-7],
  [5, 7, 2.2922076337661e-6],
  [6, 3, -1.6714766451061e-11],
  [6, 16, -0.0021171472321355],
  [6, 35, -23.895741934104],
  [7, 0, -5.905956432427e-18],
  [7, 11, -1.2621808899101e-6],
  [7, 25, -0.038946842435739],
  [8, 8, 1.1256211360459e-11],
  [8, 36, -8.2311340897998],
  [9, 13, 1.9809712802088e-8],
  [10, 4, 1.0406965210174e-19],
  [10, 10, -1.0234747095929e-13],
  [10, 14, -1.0018179379511e-9],
  [16, 29, -8.0882908646985e-11],
  [16, 50, 0.10693031879409],
  [18, 57, -0.33662250574171],
  [20, 20, 8.9185845355421e-25],
  [20, 35, 3.0629316876232e-13],
  [20, 48, -4.2002467698208e-6],
  [21, 21, -5.9056029685639e-26],
  [22, 53, 3.7826947613457e-6],
  [23, 39, -1.2768608934681e-15],
  [24, 26, 7.3087610595061e-29],
  [24, 40, 5.5414715350778e-17],
  [24, 58, -9.436970724121e-7],
];
