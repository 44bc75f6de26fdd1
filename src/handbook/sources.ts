/** What the figures of this handbook rest on: a short id, the work, and in what form it was read. Rows of tables refer here by id. */

export type Source = {
  readonly id: string;
  readonly cite: string;
  /** How it was read: the work itself, or where a copy or an extract of it was seen; 'not read' for one recalled from memory. */
  readonly seen: string;
};

const ROWS = [
  // no page to show
  ['custom', 'common practice, no source', 'no page: what turners do'],
  ['here', 'derived here', 'no page: geometry or arithmetic that can be done again'],
  // threads
  ['iso-68-1', 'ISO 68-1, basic profile of metric screw threads', 'factors as printed in handbooks and in ISCAR, Taps 2022, p. 56'],
  [
    'iso-261',
    'ISO 261:1998, general plan of metric threads',
    'from memory; extract to M11 in the Manual of Engineering Drawing, table 17.1',
  ],
  [
    'iso-965-1',
    'ISO 965-1, tolerances of metric threads, tables',
    "Machinery's Handbook 27 pp. 1794-1797 and 31 p. 2025; grade 6, g, G and H checked against a list of ASME B1.13M limits",
  ],
  [
    'iso-965-1-rest',
    'ISO 965-1, tolerances of metric threads, tables (from memory)',
    'grades other than 6 and positions e and f: not read',
  ],
  [
    'iso-965-1-formulas',
    'ISO 965-1, formulas, rounded to the R40 series',
    'FED-STD-H28/21B (1984) 5.1.3; rounding as in ASME B1.13M-2005, 6.2',
  ],
  ['iso-965-2', 'ISO 965-2 / ASME B1.13M limits of size', 'fastener catalogue mastik.pt pp. 711-712; threadlib, metric_thread.csv'],
  ['mh27', "Machinery's Handbook 27, pp. 1794-1797", 'read: minor diameters and root radii derived from pitch diameter'],
  ['mh31', "Machinery's Handbook 31", 'read in part: pp. 1250, 2025, 2173'],
  ['fed-h28-21b', 'FED-STD-H28/21B (1984), metric threads', 'read: 5.1.3 worked examples, 4.4-4.6'],
  ['fed-h28-2b', 'FED-STD-H28/2B (1991), unified threads, table II.A.1', 'read: tapping drills with share of thread'],
  ['bs-84', 'BS 84, threads of Whitworth form', 'form: a gauge maker’s page (thegauge.co.uk); BSW sizes: trfastings.com'],
  ['bs-84-rest', 'BS 84, tolerances (from memory)', 'the term 0.01 sqrt(p) was seen; the rest not'],
  ['model-threads', 'Model Engineer and brass threads of the trade', 'sizes and drills at ministeam.net page 30 and ibls.org, Threads'],
  ['bs-1157', 'BS 1157, tapping drills', 'extract at sheartak.com and studylib 18133655'],
  ['bs-93', "BS 93:1951, BA threads, as in Machinery's Handbook 31, p. 2115", 'read: sizes and tolerances'],
  ['iso-228', 'ISO 228-1, pipe threads not sealed on the thread', 'threadlib, BSPP_thread.csv; D1 again on a tap maker’s wall chart'],
  ['pipe-drills', 'tapping drills of pipe threads', 'read at 0685.com; tap makers differ'],
  ['asme-b1-1', "ASME B1.1, formulas, as in Machinery's Handbook 31, tables 3-6", 'read: formulas, rounding, worked example 1/2-28 UNEF'],
  ['thread-check', 'Thread Check, catalogue p. 130', 'read: factors and wires for three angles'],
  ['iso-898', 'ISO 898-1, stress area', 'from memory'],
  ['iso-2306', 'ISO 2306, drills for use before tapping', 'from memory; values on the list of anzugsmoment.de'],
  ['iscar-taps', 'ISCAR, Reamers and taps 2022, p. 56', 'read: heights and diameters of M10x1.5'],
  [
    'din-76',
    'DIN 76-1, thread run-outs and undercuts',
    'from memory; diameters seen for eight pitches, the row of pitch 0.6 in a text that quotes DIN 76-1:1983',
  ],
  // fits, general tolerances
  [
    'iso-286-1',
    'ISO 286-1:2010, tolerance grades and deviations',
    'engineersvault.blogspot.com 2007/02, precisemetal.in, Hartner catalogue p. 463, list of mechguru',
  ],
  ['iso-286-1-rest', 'ISO 286-1:2010 (from memory)', 'IT14; c, k, r, s; holes K to S by the rule of delta: not read'],
  ['iso-2768-1', 'ISO 2768-1:1989, tables 1 and 2', 'copies: scribd 585640440, camcut-group.com'],
  ['iso-2768-1-rest', 'ISO 2768-1:1989 (from memory)', 'class c of table 1: one copy prints other values for the first two ranges'],
  ['iso-1302', 'ISO 1302, grades of roughness (older editions)', 'read at scribd 237493784; withdrawn: print Ra'],
  // balls, drills, bar
  ['iso-3290-1', 'ISO 3290-1, steel balls', 'grades at rgpballs.com, zbnaao.com, marteau-lemarie'],
  ['ball-sizes', 'Technoball, list of ball sizes', 'read at technoball.it'],
  ['ball-sizes-rest', 'stocked ball sizes (from memory)', 'not read; inch sizes are exact 64ths'],
  ['abma-10', 'ABMA Std 10, ball grades', 'read at ballbiz.com and itiball.com'],
  ['ball-materials', "makers' pages on ball materials", 'read at peijieballs.com, stwball.com, tarso.com.cn'],
  ['ball-mass', "a maker's list: about 1130 steel balls of 6 mm a kilogram", 'read; gives 7.82 g/cm3'],
  [
    'drill-sizes',
    'ANSI/ASME B94.11M = BS 328 appendix, number and letter drills',
    "a drill maker's list, docslib 5335266; FED-STD-H28/2B table II.A.1",
  ],
  ['drill-sizes-rest', 'number and letter drills (from memory)', 'not read: the sizes marked so'],
  ['bs-328', 'BS 328, metric series of drills', 'from memory'],
  ['din-338', 'DIN 338 / ISO 235, jobber drills', 'from memory; tolerance h8 in Hartner catalogue p. 463'],
  ['iso-522', 'ISO 236 and ISO 522, sizes and tolerances of reamers', 'from memory'],
  ['iso-866', 'ISO 866 / DIN 333 form A, centre drills', 'from memory; diameters of the countersink in a copy of DIN 332:1986'],
  [
    'bar-list',
    'bar sizes of stockholders and model engineers’ suppliers (from memory)',
    'no published standard; data to be changed to what is sold where you are',
  ],
  ['glue-it', 'glue-it.com, heat treating silver steel', 'read'],
  ['schmitz', 'schmitz-metallographie.de, 1.2210', 'read: a bar of 30 mm in oil did not harden'],
  ['stubmandrel', 'stubmandrel.co.uk, hardening; D-bits', 'read'],
  ['collins', 'C. Collins, D-bits, metalwebnews.com', 'read'],
  ['steel-data', 'tool-steel data sheets (from memory)', 'not read'],
  ['en-1057', 'EN 1057, copper tube', 'leaflet of the Copper Development Association, scribd 468981400'],
  ['model-pipe', 'copper tube of model engineers’ suppliers (from memory)', 'not read'],
  ['swg', 'standard wire gauge, exact by definition', 'from memory'],
  // materials
  ['durbin', 'Durbin Metals, CW614N', 'read: composition and density'],
  ['kemper', 'Kemper, CC491K; EN 1982 as in fitscherguss.de', 'read: strength of LG2, limit of temperature'],
  ['john-hood', 'John Hood & Co., PB102', 'read: composition and strength, drawn 18-40 mm'],
  ['alloy-data', 'alloy data sheets (from memory)', 'not read'],
  ['htpipe', 'htpipe.com, data sheet of 303', 'read'],
  [
    'dezincification',
    'corrosion-doctors.org: valves of 15 % zinc at most',
    'read; wieland-chase.com holds that the figure has no traceable origin',
  ],
  ['lr-ssc', "Lloyd's Register, Special Service Craft, part 15 chapter 1, table 1.6.2", 'read at imorules.com'],
  ['uk-copper', 'UK Copper Board, questions and answers', 'read at ukcopperboard.co.uk'],
  ['lawton', 'Lawton Tubes, working pressures of EN 1057 tube', 'read at lawtontubes.co.uk'],
  // cutting
  ['to-1-1a-9', 'USAF T.O. 1-1A-9, table 2-8', 'read: speeds for stainless steels'],
  ['navedtra', 'US Navy NAVEDTRA 14345, drilling', 'read: speeds and feeds of drills'],
  ['od1645', 'US Army OD1645', 'read: pp. 55, 69-70'],
  ['tm-1-420', 'US War Department TM 1-420 (1940), p. 53', 'read: parting, cutting fluids'],
  ['protocutter', 'protocutter.com, cutting speeds', 'read: drilling and reaming speeds'],
  ['drill-card', 'Metal drilling reference guide, a drill maker’s card, studylib 18232362', 'read: speeds, feeds, deep holes'],
  ['tutorial', 'a university tutorial on turning, scribd 615349553', 'read: HSS and carbide speeds'],
  ['handout', 'a workshop handout, docslib 5103932', 'read: speeds and greatest depths of cut'],
  ['c36000', 'data sheet of C36000', 'read at pdfcoffee.com'],
  ['tap-die', 'tap-die.com, tapping speeds and fluids', 'read'],
  ['gtz', 'GTZ, Manual reaming, B640_6', 'read: stock left for a reamer'],
  ['applied-science', 'Applied Science for Metal-Workers', 'read at chestofbooks.com'],
  ['dormer', 'Dormer handbook, stock removal (from memory)', 'not read'],
  ['greenfield', 'Kennametal Greenfield, drilling tips', 'read at iowamidland.com'],
  ['sandvik', 'Sandvik, threading manual p. 114', 'read: infeed by the modified schedule'],
  ['widia', 'WIDIA, catalogue 2017, p. 685', 'read: number of passes and the same schedule'],
  ['mitsubishi', 'Mitsubishi Materials, infeed of threads; cutting formulas', 'read'],
  ['sumitomo', 'Sumitomo, catalogue 2019-20, pp. 404, 415', 'read: infeed with a sharp tool'],
  ['ingersoll', 'Ingersoll, catalogue 2011, pp. 1262, 1346', 'read: passes of threads; depth of parting'],
  ['zcc', 'ZCC Cutting Tools, catalogue 2019, p. 457', 'read: infeed of threads'],
  [
    'pitch-error',
    'a lecture on the measurement of screw threads, scribd 333659626',
    'read: an error of pitch as one of pitch diameter, cot a; 1.92 for 55 degrees',
  ],
  ['lzqtool', 'lzqtool.com, drilling formulas', 'read: a worked example'],
  [
    'bench-set',
    'set here in the lower middle of published ranges, for a lathe of 250-750 W',
    'ranges: see the sources named beside the row',
  ],
  ['iscar-kc', 'ISCAR, turning catalogue 2017, p. 558, groups of VDI 3323', 'read: specific cutting forces'],
  ['kc-rest', "a tool maker's older table of cutting forces (from memory)", 'not read'],
  ['tungaloy', 'Tungaloy, general catalogue 2020-2021, p. L068', 'read: torque, thrust and power of twist drills'],
  ['drill-rest', 'constants of drills scaled with the cutting force', 'made here from the published rows'],
  ['kyocera', 'Kyocera, catalogue 2021-22, p. 1069', 'read: formulas of time and power'],
  ['isakov', 'E. Isakov, Cutting Tool Engineering, July 2019', 'read: deflection of a boring bar'],
  ['eisc', 'Erie Industrial Supply, Boring basics, eisc.com', 'read: radial and feed force as shares of the tangential'],
  ['zcc-parting', 'ZCC, catalogue 2019, p. 460', 'read: height of parting blades, feed near the centre'],
  ['mh31-drill', "Machinery's Handbook 31, pp. 1150-1153, tables 6 to 9", 'read: formulas of torque and thrust, tables of their factors'],
  ['derry-collard', 'Turning and boring tapers (1902), Derry Collard Co', 'read: table of tapers by angle'],
  ['beams', 'theory of beams', 'textbook formulas, made again here'],
  ['hall', 'H. Hall, homews.co.uk, page 259', 'read: fine feed by a top slide set over'],
  ['din-10', 'DIN 10, squares, as in Yamawa, DIN taps 2016-17, p. 123', 'read: pairs of shank and square'],
  ['iso-237', 'ISO 237, driving squares (from memory)', 'not read; tolerances as quoted by ISO 529:2017'],
  ['din-79', 'DIN 79:2004, squares for handwheels', 'copy at scribd 637532634'],
  // capability
  ['process-it', 'aksan-tm.com, grades by process', 'read'],
  ['narayana', 'K. L. Narayana, Machine Drawing, fig. 15.2', 'read'],
  ['process-ra', 'meadinfo.org 2009/06, roughness by process', 'read'],
  ['youssef', 'Youssef & El-Hofy, Machining Technology', 'read: roughness of a round-nosed tool'],
  // valves, water, steam
  ['perry', 'Perry, ball valves, nwmes.org.uk, technical articles', 'read: lifts, common pairs, table of sink'],
  ['artisan', 'Artisan, Boiler fittings, modelengineeringwebsite.com', 'read: angle of contact 35 to 45 degrees, sharp edge'],
  ['lardner', 'D. Lardner, The Steam Engine, art. 131', 'read'],
  ['rose', 'J. Rose, Modern Machine-Shop Practice', 'read: speed of water in pump pipes, slip'],
  ['joukowsky', 'Joukowsky 1898 and Korteweg 1878', 'formulas as in the manual of COMSOL, Pipe Flow'],
  ['britannica', 'Encyclopaedia Britannica, 11th edition, Hydraulics, 17-20', 'read: coefficients of orifices and mouthpieces'],
  ['iec-60534', 'IEC 60534-2-1, sizing of control valves', 'formulas and examples as in the library fluids (control_valve.py)'],
  ['napier', 'Napier’s rule for steam (from memory; the constant 51.43 seen)', 'several open sources; Rankine and Kent not read'],
  ['api-520', 'API 520-I, 7th edition, steam', 'formula, table of superheat and examples as in the library fluids (safety_valve.py)'],
  ['mankenberg', 'Mankenberg, sizing for steam', 'read: worked example; its formula inferred'],
  ['shigley', 'Shigley, power screws (formula read at vcalc and amesweb.info)', 'formula read; the numbers of example 8-1 from memory'],
  ['pvs-2017', 'ASME/NRC Pump and Valve Symposium 2017, PVS2017-3518', 'read: friction of packing'],
  ['tribology', 'Tribology Handbook, B25', 'read: tables 25.1 and 25.2, fig. 25.11'],
  ['dracomech', 'dracomech.com, packing', 'read: size, compression, finish'],
  ['steam-maths', 'control-specialties.com, steam mathematics', 'read: feed 1.5 times the evaporation'],
  [
    'b31-9',
    'ASME B31.9, brazed joints in saturated steam, and a data sheet of the Copper Development Association',
    'read at engineersedge.com',
  ],
  ['model-test', 'certificate of a new model boiler to AMBSC parts 1 and 3', 'read at miniaturesteammodels.com'],
  ['bourne', 'Bourne, Catechism of the Steam Engine, Q. 271', 'read: evaporation'],
  ['lame', 'Lamé, thick cylinders', 'textbook formula, read at curioustab.com; a published example at expertsmind.com'],
  [
    'roark',
    "Roark's Formulas for Stress and Strain, table 11.2, case 1a (ring-shaped plate)",
    'constants read at eng-calculations.com; figures of the table from memory, a fit of them read at calcs.org.uk, PROC003',
  ],
  [
    'if97',
    'IAPWS R7-97(2012), Industrial Formulation 1997',
    'coefficients in two public libraries that reproduce it; checked with its own tables',
  ],
  ['bipm', 'definition (SI)', 'exact'],
  [
    'iso-7010',
    'ISO 7010:2019, registered safety signs',
    'numbers and meanings of W001 to W029 and M007 to M019 on published lists, M004 in a Korean table that names it, P028 in a table of signs that names it; its drawings were not used',
  ],
  ['water-data', 'water and metals, physical data (from memory)', 'not read'],
] as const satisfies readonly (readonly [id: string, cite: string, seen: string])[];

export type SourceId = (typeof ROWS)[number][0];

export const sources: readonly Source[] = ROWS.map(([id, cite, seen]) => ({ id, cite, seen }));

const BY_ID: ReadonlyMap<string, Source> = new Map(sources.map((s) => [s.id, s]));

/** The work as it is printed beside a figure, with a place in it or an addition where given. Throws Error on an id that is not listed. */
export function cite(id: SourceId, place?: string): string {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`no source '${id}'`);
  return place === undefined ? found.cite : `${found.cite}; ${place}`;
}
