/**
 * What painters, handbooks and the trade say of tints, masstones and glazes, as data. Mixtures are by volume of tube
 * paint in linseed oil. Hues are CIELAB angles in degrees (D65, 2°): red about 25, yellow 90, green 160, blue 260, violet
 * 310; a range may pass through 0. The ranges leave room for the sorts and makes of a pigment. A new fact is a new line.
 */

/** A film of one pigment: a tint with so many parts of titanium white, opaque paint from the tube, or a thin glaze. */
export type Shown = 10 | 100 | 'masstone' | 'glaze';
export type Range = readonly [least: number, most: number];

interface Told {
  readonly source: string;
}
/** The colour of a film lies within ranges. */
export interface Looks extends Told {
  readonly of: string;
  readonly as: Shown;
  readonly hue?: Range;
  readonly chroma?: Range;
  readonly lightness?: Range;
}
/** Absorption tinting strength of the first over that of the second, at least `by` (1 unless said). */
export interface Stronger extends Told {
  readonly stronger: readonly [string, string];
  readonly by?: number;
}
/** Tints of both of one lightness (75 unless said): C* of the first over the second's is at least `by` (1 unless said). */
export interface Cleaner extends Told {
  readonly cleaner: readonly [string, string];
  readonly by?: number;
  readonly at?: number;
}
/** Tints of both of one lightness (75 unless said): degrees from the second's hue to the first's, red towards yellow up. */
export interface Turned extends Told {
  readonly hueOf: readonly [string, string];
  readonly turned: Range;
  /** what a painter calls it */
  readonly word: string;
  readonly at?: number;
}
/** One part of ivory black in ten of each white: the first comes out lighter. */
export interface Whiter extends Told {
  readonly whiter: readonly [string, string];
}
/** 25 µm of tube paint over black and white: contrast ratio of the first is higher. */
export interface Hides extends Told {
  readonly hidesMore: readonly [string, string];
}
export type Fact = Looks | Stronger | Cleaner | Turned | Whiter | Hides;

const PRACTICE = 'common practice';
const MEMORY = 'from memory';
const ALTMEYER =
  'Altmeyers Encyclopedia, Pigment Blue 15:3 (altmeyers.org): α forms (15:0 to 15:2) red-tinted, β forms (15:3, 15:4) green-tinted, ε form (15:6) strongly red-tinted';
const BOTANICAL =
  'American Society of Botanical Artists, “Phthalocyanine”, The Botanical Artist 14/1 (of water colour): PB15:1 and PB15:6 have a red bias, PB15:3 a green one, PG7 a blue one';
const JENNINGS =
  'Jennings, Paint and Colour Mixing, on testing Prussian blue: very strong; one part in a hundred gives a distinct sky blue, clear and free from any leaden or grey appearance';
const PARKHURST = 'Parkhurst, The Painter in Oil (1898), Blues: the greenish tone of Prussian blue in tints';
const LADIES =
  'The Ladies’ Manual of Art (1887): Indian red is of a deep purple cast; umber is a yellowish brown, burnt a reddish brown';
const ARGOMED =
  'ARGOMED glossary, entry 2438, after MFA Boston 2000: raw umber is a pale yellowish brown, burnt umber a dark brown with a reddish tone';
const LEMON = 'Boddy-Evans, pigment profile of PY3: fairly cool, leans towards green; tints weakly';
const UNDERTONES =
  'a landscape painter’s test of tints (“Undertones and tints”, 2010, second-hand): phthalocyanine blue powerful, green earth weak';
const BLACKS =
  'an art magazine’s table of blacks (second-hand): ivory a brown black of moderate strength, lamp a blue black with cool greys, Mars stronger and more opaque, perylene so green that it is called a green in other media';
const SHOP =
  'a teacher’s account of blacks (of acrylics, second-hand): carbon and lamp black very strong and cool, ivory black moderate';
const AAT =
  'Getty Art & Architecture Thesaurus, iron oxide red: a wide variety from light, bright red to deep purplish red, good tinting strength';
const HERBST = 'Herbst & Hunger, Industrial Organic Pigments (from memory)';
const GREEN_GLASS =
  'a trade account of the two greens (second-hand): viridian is weaker and dirtier than phthalocyanine green';
const GETTENS_GREEN =
  'Gettens & Stout, Painting Materials (1942) p. 117, for its weakness in oil; the hue from memory';
const HANDBOOK =
  'an anonymous handbook text (howtodrawit.com, second-hand): Prussian blue the strongest in tinting of the old pigments, cobalt blue not very strong and easily swamped';
const WHITES =
  'Reynolds tinting strengths of white pigments (ASTM D332, figures from memory): lead white 100, zinc white 210, lithopone 260, zinc sulphide 600, anatase 1250, rutile 1600';
const PR202_NOTE =
  'a painter’s comparison of swatches (of water colour, second-hand): PR202 more muted than PR122';
const EARTHS =
  'a teacher’s list of colour biases (of water colour, second-hand): burnt sienna leans strongly to orange, raw umber has a slight greenish tinge, yellow ochre a slight red leaning';

export const FACTS: readonly Fact[] = [
  // Blues
  { of: 'PB29', as: 10, hue: [268, 292], source: PRACTICE },
  { of: 'PB28', as: 10, hue: [258, 282], source: PRACTICE },
  { of: 'PB35', as: 10, hue: [232, 255], source: PRACTICE },
  { of: 'PB15:3', as: 10, hue: [235, 258], chroma: [30, 60], source: PRACTICE },
  { of: 'PB15:3', as: 100, chroma: [12, 40], source: UNDERTONES },
  { of: 'PB27', as: 10, hue: [238, 268], source: PARKHURST },
  { of: 'PB27', as: 100, hue: [222, 262], chroma: [6, 30], source: JENNINGS },
  { of: 'PB60', as: 10, hue: [255, 285], source: PRACTICE },
  {
    of: 'NB1',
    as: 10,
    hue: [235, 280],
    chroma: [0, 18],
    source: 'Parkhurst, The Painter in Oil (1898): indigo has a greyish quality',
  },
  { of: 'PB36 turquoise', as: 10, hue: [190, 222], source: PRACTICE },
  { of: 'PB29', as: 'masstone', lightness: [0, 28], source: PRACTICE },
  {
    of: 'PB27',
    as: 'masstone',
    lightness: [0, 12],
    source: PRACTICE,
  },
  { of: 'PB15:3', as: 'masstone', lightness: [0, 18], source: PRACTICE },
  { of: 'PB29', as: 'glaze', hue: [255, 300], source: PRACTICE },
  { of: 'PB27', as: 'glaze', hue: [225, 285], source: PRACTICE },
  { hueOf: ['PB15:1', 'PB15:3'], word: 'redder', turned: [0, 20], source: ALTMEYER },
  { hueOf: ['PB15:6', 'PB15:3'], word: 'redder', turned: [0, 30], source: BOTANICAL },
  { hueOf: ['PB15:6', 'PB15:1'], word: 'redder', turned: [0, 20], source: ALTMEYER },
  { hueOf: ['PB15:4', 'PB15:3'], word: 'as green', turned: [-6, 6], source: ALTMEYER },
  {
    hueOf: ['PB16', 'PB15:3'],
    word: 'greener',
    turned: [-45, 0],
    source:
      'American Society of Botanical Artists, The Botanical Artist 14/1: PB16 is a turquoise, a blue with a strong green bias',
  },
  { hueOf: ['PB60', 'PB15:3'], word: 'redder', turned: [5, 45], source: PRACTICE },
  { hueOf: ['PB29', 'PB28'], word: 'redder', turned: [0, 25], source: PRACTICE },
  { hueOf: ['PB28', 'PB35'], word: 'redder', turned: [5, 40], source: PRACTICE },
  { hueOf: ['PB29', 'PB27'], word: 'redder', turned: [5, 60], source: PARKHURST },
  { hueOf: ['PB73', 'PB28'], word: 'more violet', turned: [3, 40], source: PRACTICE },
  { hueOf: ['PB33', 'PB35'], word: 'greener', turned: [-45, 0], at: 90, source: PRACTICE },
  {
    stronger: ['PB15:3', 'PB29'],
    by: 5,
    source: 'from memory: the trade said 20 to 40 times by weight when it was new',
  },
  { stronger: ['PB27', 'PB29'], by: 3, source: HANDBOOK },
  { stronger: ['PB28', 'PB35'], source: PRACTICE },
  {
    stronger: ['PB28', 'PB32'],
    by: 2,
    source: 'Gettens & Stout, Painting Materials (1942), smalt (from memory): its tinting strength is low',
  },
  { stronger: ['PB29', 'PB29 natural'], by: 1.2, source: MEMORY },
  { cleaner: ['PB15:3', 'PB27'], source: PRACTICE },
  { cleaner: ['PB15:3', 'PB60'], source: PRACTICE },
  { cleaner: ['PB29', 'NB1'], by: 1.5, source: PRACTICE },
  // Greens
  { of: 'PG7', as: 10, hue: [172, 195], source: BOTANICAL },
  { of: 'PG36', as: 10, hue: [155, 180], source: PRACTICE },
  { of: 'PG18', as: 10, hue: [168, 192], source: PRACTICE },
  { of: 'PG17', as: 10, hue: [125, 152], source: PRACTICE },
  { of: 'PG23', as: 10, hue: [110, 170], chroma: [2, 14], source: GETTENS_GREEN },
  { of: 'PG7', as: 'masstone', lightness: [0, 20], source: PRACTICE },
  { of: 'PG17', as: 'masstone', lightness: [32, 50], hue: [122, 150], source: PRACTICE },
  { of: 'PG7', as: 'glaze', hue: [165, 195], source: PRACTICE },
  { of: 'PG18', as: 'glaze', hue: [160, 192], source: PRACTICE },
  { hueOf: ['PG36', 'PG7'], word: 'yellower', turned: [-30, -2], source: PRACTICE },
  { hueOf: ['PG17', 'PG18'], word: 'yellower', turned: [-65, -20], at: 88, source: PRACTICE },
  { cleaner: ['PG36', 'PG7'], by: 0.97, source: PRACTICE },
  { cleaner: ['PG7', 'PG18'], by: 1.2, at: 88, source: GREEN_GLASS },
  { cleaner: ['PG50', 'PG17'], at: 85, source: PRACTICE },
  { cleaner: ['PG15', 'PG17'], by: 1.2, at: 80, source: PRACTICE },
  { stronger: ['PG7', 'PG18'], by: 5, source: GREEN_GLASS },
  { stronger: ['PG7', 'PG36'], source: HERBST },
  { stronger: ['PG18', 'PG23'], by: 1.5, source: UNDERTONES },
  // Yellows
  { of: 'PY35', as: 10, hue: [97, 113], chroma: [35, 80], source: PRACTICE },
  { of: 'PY37', as: 10, hue: [84, 98], chroma: [40, 85], source: PRACTICE },
  { of: 'PY35', as: 'masstone', lightness: [75, 92], chroma: [80, 115], source: PRACTICE },
  { of: 'PY37', as: 'masstone', chroma: [85, 115], hue: [74, 90], source: PRACTICE },
  { of: 'PY3', as: 10, hue: [96, 110], source: LEMON },
  { of: 'PY74', as: 10, hue: [86, 100], source: PRACTICE },
  { of: 'PY42', as: 10, hue: [74, 90], source: PRACTICE },
  { of: 'PY43', as: 10, hue: [68, 88], source: PRACTICE },
  { of: 'PY43', as: 'masstone', lightness: [42, 66], hue: [62, 80], source: PRACTICE },
  { of: 'PY41', as: 10, hue: [80, 98], source: PRACTICE },
  { of: 'PY53', as: 10, hue: [98, 114], source: PRACTICE },
  { of: 'PY184', as: 10, hue: [96, 112], source: PRACTICE },
  { of: 'PY110', as: 10, hue: [66, 84], source: PRACTICE },
  { of: 'PY150', as: 10, hue: [92, 112], source: PRACTICE },
  { of: 'PY151', as: 10, hue: [92, 106], source: HERBST },
  { of: 'PY175', as: 10, hue: [96, 110], source: HERBST },
  { of: 'PY40', as: 'glaze', hue: [85, 106], source: PRACTICE },
  { hueOf: ['PY3', 'PY1'], word: 'greener', turned: [2, 16], at: 90, source: HERBST },
  { hueOf: ['PY3', 'PY74'], word: 'greener', turned: [1, 16], at: 90, source: LEMON },
  { hueOf: ['PY65', 'PY74'], word: 'redder', turned: [-20, -2], at: 90, source: HERBST },
  { hueOf: ['PY83', 'PY74'], word: 'redder', turned: [-30, -5], at: 88, source: HERBST },
  { hueOf: ['PY35', 'PY37'], word: 'greener', turned: [4, 25], at: 92, source: PRACTICE },
  { hueOf: ['PY41 light', 'PY41'], word: 'greener', turned: [0, 15], at: 92, source: PRACTICE },
  { stronger: ['PY74', 'PY3'], by: 1.2, source: HERBST },
  { stronger: ['PY83', 'PY3'], by: 1.5, source: HERBST },
  { stronger: ['PY42', 'PY43'], by: 1.1, source: PRACTICE },
  { stronger: ['PY37', 'PY41'], by: 1.3, source: PRACTICE },
  { stronger: ['PY42', 'PBr7 raw-sienna'], by: 1.5, source: PRACTICE },
  { cleaner: ['PY37', 'PBr24'], at: 90, source: PRACTICE },
  { cleaner: ['PY37', 'PY42'], by: 1.4, at: 90, source: PRACTICE },
  { cleaner: ['PY42', 'PY43'], at: 88, source: PRACTICE },
  // Oranges and reds
  { of: 'PO20', as: 10, hue: [42, 68], chroma: [35, 80], source: PRACTICE },
  { of: 'PR108', as: 10, hue: [12, 34], chroma: [25, 65], source: PRACTICE },
  { of: 'PR108', as: 'masstone', lightness: [28, 46], hue: [26, 42], source: PRACTICE },
  { of: 'PR106', as: 10, hue: [15, 36], source: PRACTICE },
  { of: 'PR106', as: 'masstone', hue: [27, 44], source: PRACTICE },
  { of: 'PR105', as: 10, hue: [28, 52], source: PRACTICE },
  { of: 'PO43', as: 10, hue: [30, 58], source: HERBST },
  { of: 'PO49', as: 10, hue: [50, 80], source: PRACTICE },
  { of: 'PR254', as: 10, hue: [4, 28], source: PRACTICE },
  { of: 'PR83', as: 10, hue: [345, 14], source: PRACTICE },
  { of: 'NR9', as: 10, hue: [345, 14], chroma: [10, 40], source: PRACTICE },
  { of: 'NR4', as: 10, hue: [340, 8], source: PRACTICE },
  { of: 'PR122', as: 10, hue: [330, 352], source: PRACTICE },
  { of: 'PV19', as: 10, hue: [345, 10], source: PRACTICE },
  { of: 'PR83', as: 'glaze', hue: [345, 35], source: PRACTICE },
  { of: 'PV19', as: 'glaze', hue: [335, 25], source: PRACTICE },
  { of: 'PR83', as: 'masstone', lightness: [4, 28], source: PRACTICE },
  { hueOf: ['PR108', 'PR108 light'], word: 'bluer', turned: [-15, 0], source: PRACTICE },
  { hueOf: ['PR108 deep', 'PR108'], word: 'bluer', turned: [-15, 0], source: PRACTICE },
  { hueOf: ['PR108', 'PR106'], word: 'not much bluer', turned: [-10, 12], source: PRACTICE },
  { hueOf: ['PR108', 'PR113'], word: 'no pinker', turned: [-3, 12], source: PRACTICE },
  { hueOf: ['PO20', 'PR108'], word: 'yellower', turned: [15, 60], at: 82, source: PRACTICE },
  { hueOf: ['PR255', 'PR254'], word: 'yellower', turned: [2, 25], source: HERBST },
  { hueOf: ['PR264', 'PR254'], word: 'bluer', turned: [-35, -2], source: HERBST },
  { hueOf: ['PO73', 'PR255'], word: 'yellower', turned: [3, 40], source: HERBST },
  { hueOf: ['PR122', 'PV19'], word: 'bluer', turned: [-35, -3], source: HERBST },
  { hueOf: ['PV19 violet', 'PV19'], word: 'bluer', turned: [-40, -2], source: HERBST },
  { hueOf: ['PR209', 'PV19'], word: 'yellower', turned: [2, 40], source: HERBST },
  { hueOf: ['PR83', 'PR108'], word: 'bluer', turned: [-45, -3], source: PRACTICE },
  { stronger: ['PR254', 'PR108'], by: 1.5, source: PRACTICE },
  { stronger: ['PR108', 'PR106'], by: 1.2, source: PRACTICE },
  { stronger: ['PR83', 'NR9'], by: 1.3, source: PRACTICE },
  { stronger: ['PR122', 'NR9'], by: 2, source: PRACTICE },
  { cleaner: ['PR122', 'PR202'], by: 1, source: PR202_NOTE },
  { cleaner: ['PR122', 'PV19 violet'], source: PRACTICE },
  { cleaner: ['PR254', 'PR179'], source: PRACTICE },
  { cleaner: ['PR108', 'PR101'], by: 1.1, source: PRACTICE },
  // Violets
  { of: 'PV23', as: 10, hue: [295, 318], source: PRACTICE },
  { of: 'PV14', as: 10, hue: [300, 335], source: PRACTICE },
  { of: 'PV15', as: 10, hue: [292, 320], source: PRACTICE },
  { of: 'PV16', as: 10, hue: [308, 338], source: PRACTICE },
  { of: 'PV23', as: 'masstone', lightness: [0, 12], source: PRACTICE },
  { hueOf: ['PV37', 'PV23'], word: 'redder', turned: [0, 25], source: HERBST },
  { stronger: ['PV23', 'PV14'], by: 10, source: PRACTICE },
  { stronger: ['PV23', 'PR122'], by: 1.2, source: PRACTICE },
  // Earths and oxides
  { of: 'PR101', as: 10, hue: [18, 42], source: PRACTICE },
  { of: 'PR101', as: 'masstone', lightness: [24, 44], hue: [28, 48], source: AAT },
  {
    of: 'PR101 transparent',
    as: 10,
    hue: [25, 52],
    chroma: [14, 40],
    source: 'common practice: a salmon, not a grey',
  },
  { of: 'PR101 transparent', as: 'glaze', hue: [42, 70], chroma: [15, 90], source: PRACTICE },
  { of: 'PY42 transparent', as: 'glaze', hue: [70, 92], source: PRACTICE },
  { of: 'PR101 violet', as: 10, hue: [0, 33], source: LADIES },
  {
    of: 'PBr7 raw-umber',
    as: 10,
    hue: [66, 95],
    chroma: [4, 16],
    source: ARGOMED,
  },
  { of: 'PBr7 raw-umber', as: 'masstone', hue: [58, 90], lightness: [12, 36], source: EARTHS },
  { of: 'PBr7 burnt-umber', as: 10, hue: [48, 78], chroma: [4, 18], source: ARGOMED },
  { of: 'PBr7 burnt-umber', as: 'masstone', lightness: [10, 30], source: PRACTICE },
  { of: 'PBr7 burnt-sienna', as: 10, hue: [38, 64], chroma: [10, 32], source: EARTHS },
  { of: 'PBr7 burnt-sienna', as: 'masstone', lightness: [16, 36], source: PRACTICE },
  { of: 'PBr7 burnt-sienna', as: 'glaze', hue: [42, 72], source: EARTHS },
  { of: 'PBr7 raw-sienna', as: 10, hue: [66, 86], source: PRACTICE },
  { of: 'PBr7 raw-sienna', as: 'masstone', lightness: [22, 48], source: PRACTICE },
  { of: 'NBk6', as: 10, hue: [45, 92], chroma: [3, 18], source: PRACTICE },
  {
    of: 'NBk6',
    as: 'glaze',
    hue: [45, 90],
    chroma: [5, 60],
    source: 'common practice: a golden brown where thin',
  },
  { hueOf: ['PBr7 burnt-umber', 'PBr7 raw-umber'], word: 'redder', turned: [-45, -4], source: ARGOMED },
  { hueOf: ['PBr7 burnt-sienna', 'PBr7 raw-sienna'], word: 'redder', turned: [-50, -8], source: EARTHS },
  { hueOf: ['PR101 violet', 'PR101 light'], word: 'bluer', turned: [-35, -2], source: AAT },
  { hueOf: ['PR102', 'PR101'], word: 'yellower', turned: [0, 30], source: PRACTICE },
  { hueOf: ['PR101 transparent', 'PR101'], word: 'yellower', turned: [0, 25], source: PRACTICE },
  { cleaner: ['PR101 light', 'PR101 violet'], source: AAT },
  { cleaner: ['PR101 transparent', 'PBr7 burnt-umber'], by: 1.1, source: PRACTICE },
  { stronger: ['PR101', 'PR102'], by: 1.1, source: PRACTICE },
  { stronger: ['PR101', 'PBr7 burnt-sienna'], by: 1.5, source: AAT },
  // Blacks
  { of: 'PBk6', as: 10, hue: [225, 290], chroma: [1, 9], source: BLACKS },
  { of: 'PBk7', as: 10, hue: [225, 290], chroma: [1, 9], source: SHOP },
  { of: 'PBk9', as: 10, chroma: [0, 4], source: BLACKS },
  { of: 'PBk9', as: 'masstone', lightness: [0, 14], source: PRACTICE },
  { of: 'PBk11', as: 10, chroma: [0, 5], source: BLACKS },
  {
    of: 'PBk8',
    as: 10,
    hue: [180, 300],
    chroma: [0.3, 7],
    source: 'common practice: also called blue black, for the bluish grey of its tints',
  },
  { of: 'PBk31', as: 10, hue: [125, 230], chroma: [1, 15], source: BLACKS },
  { stronger: ['PBk7', 'PBk9'], by: 2.5, source: SHOP },
  { stronger: ['PBk6', 'PBk9'], by: 2, source: SHOP },
  { stronger: ['PBk11', 'PBk9'], by: 1.2, source: BLACKS },
  // Whites
  { whiter: ['PW6', 'PW4'], source: WHITES },
  { whiter: ['PW4', 'PW1'], source: WHITES },
  { whiter: ['PW5', 'PW1'], source: WHITES },
  { whiter: ['PW7', 'PW5'], source: WHITES },
  { whiter: ['PW6 anatase', 'PW7'], source: WHITES },
  { whiter: ['PW6 rutile', 'PW6 anatase'], source: WHITES },
  { whiter: ['PW1', 'PW22'], source: PRACTICE },
  // Hiding
  { hidesMore: ['PW6', 'PW4'], source: PRACTICE },
  { hidesMore: ['PW1', 'PW18'], source: PRACTICE },
  { hidesMore: ['PG17', 'PG18'], source: PRACTICE },
  { hidesMore: ['PY42', 'PY42 transparent'], source: PRACTICE },
  { hidesMore: ['PR101', 'PR101 transparent'], source: PRACTICE },
  { hidesMore: ['PY37', 'PY40'], source: PRACTICE },
  { hidesMore: ['PY37', 'PY3'], source: LEMON },
  { hidesMore: ['PB35', 'PB29'], source: PRACTICE },
];
