/**
 * Texts that are edited as they are in an editor: each `«a¦b¦c»` holds the ways one stretch may read, some of them
 * slips. Between them they hold every declaration and every field of the language.
 */
export const PLAN = `«paintplan 1¦paintplan 2¦»
plan "«Quinces¦Pears»"
start «2027-01-11¦2027-02-30¦2026-12-01»
use "palette.paintplan"
studio {
  temperature «18..21 °C¦12 °C¦68 °F»
  humidity «55 %¦80 %»
  room «40 m³¦12 m³»
  air-changes «2 per hour¦0 per hour»
  session «3 hours¦6 hours»
  light «150 lux 3000 hours per year¦50 lux¦200 lux 1000 hours per year»
  light-source «D65¦D50¦A¦F»
  specular «excluded¦included¦both»
}
support «linen 50 x 40 cm¦oak-panel 50 x 40 cm¦linen¦linnen 50 x 40 cm¦linen 90 x 40 cm»
area backdrop «45 %¦30 %¦»
area table «25 %¦40 %»
area light-side «10 %¦»
area dark-side «8 %¦9 %»
area jug 12 %
group quinces = «light-side, dark-side¦light-side¦light-side, jug¦light-sid»
pigment my-ochre like «PY43¦PBr7 burnt-sienna¦PR101¦PY99» {
  oil-absorption «28..34 g/100g¦45 g/100g¦0 g/100g»
  density «3.1 g/cm³¦2.2 g/cm³»
  masstone «#b8862f¦#a87020¦#zz»
  tint «1:4¦1:9» «PW6¦chalky¦warm-white¦my-ochre» «lab(85 6 30)¦lab(80 8 34)»
  over-black «lch(35 20 70)¦lch(30 20 70)» at «20 µm¦30 µm»
  over-white «rgb(200 150 60)¦rgb(190 140 50)» at «20 µm¦12 µm»
  lightfast «I¦III¦VI»
  hazard «fine-dust, silica-dust¦lead¦fine-dist»
}
paint chalky = «9 PW6 + 1 PY43¦PW6¦PW4¦PW1» in «safflower¦linseed¦walnutt» «35 % oil¦20 % oil¦»
paint warm-white = «9 PW6 + 1 PY43¦8 PW1 + 1 PY43¦9 PW6 + 1 my-ochre» in «safflower¦linseed» «35 % oil¦» «tube 40 ml¦tube 0 ml¦tube 37 ml price 8 EUR» «price 12.50 EUR¦price 12.50¦»
paint burnt-sienna = PBr7 «burnt-sienna¦raw-sienna¦» in linseed
paint blue = «PB15:3¦PB29¦PB28» in «oil¦linseed¦poppy» «hand-ground¦hand-grond¦»
paint ochre = «my-ochre¦2 my-ochre + 1 PBk9¦PY43» in linseed
medium lean = «60 % turpentine + 40 % linseed¦70 % odourless-spirit + 30 % linseed¦60 % turpentine + 40 g linseed»
medium rich = «20 % turpentine + 20 % alkyd + 60 % walnut¦100 % linseed¦1 rich + 1 linseed»
medium doubled = «30 ml rich + 10 ml lean¦30 g rich + 10 g lean»
mix body = «5 ochre + 2 warm-white¦5 ochre + 1 blue¦5 ochre + PB29¦1 body + 1 blue» target «#c9a24a¦#b99a44» within «3¦5»
mix shade = «.5 body + 1.5 blue¦1 body + 1 burnt-sienna»
mix dun = «PB29 + PBr7 burnt-sienna¦PBk9 + PBr7 burnt-sienna»
size seal { material «glue¦pva¦» «coats 2¦» }
ground priming {
  «colour 1 warm-white¦material chalk-glue¦material acrylic¦colour #efe8d8¦colour 1 warm-whit»
  film «80 µm¦120 µm¦full»
  coats «2¦3¦1»
  wait «10 weeks¦3 days»
}
drawing outline { material «charcoal¦ink¦charcol»   film «veil¦thin» }
imprimatura tone {
  colour «raw-umber¦my-ochre¦PBr7 raw-umber»
  medium «60 %¦40 %¦» «lean¦linseed¦turpentine»
  film «6 µm¦4..9 µm»
}
underlayer grisaille {
  on «quinces, jug¦quinces¦backdrop, quinces»
  colour «dun¦4 warm-white + 1 PBk9»
  «material egg¦material casein¦»
  film «20..30 µm¦15 µm»
  painted «2027-04-01¦2027-05-01¦»
  «dry 2027-04-04¦dry 2027-04-20¦»
  measured «lab(60 1 3)¦lab(50 1 3)» in «jug¦table»
}
«layer¦glaze¦scumble» slab {
  on «backdrop except table¦backdrop, table¦backdrop except tabel»
  colour «shade¦color(xyz-d50 0.2 0.21 0.15)¦body¦3 ochre + 1 PR83»
  film «full¦30 µm¦unknown»
  «note "Broad."¦note Broad paint strokes¦»
}
glaze first-warm {
  on quinces
  prepare «abrade¦wipe with odourless-spirit¦polish»
  prepare «oil-out with walnut¦oil-out with rich¦»
  colour «2 burnt-sienna + 1 blue¦ochre¦2 burnt-sienna + 1 bluue»
  medium «65 % rich¦30 % doubled¦65 % lean¦20 % my-ochre»
  film «8 µm¦12 µm¦glassy»
  coats «3¦1¦2»
  wipe-out «light-side, jug¦dark-side¦»
  «wait 3 days¦wait 9 weeks¦»
}
scumble last-light {
  on light-side
  color «warm-white¦chalky + my-ochre»
  medium 10 % «stand-oil¦linseed»
  film «thin¦to lightness 70¦to lightness 60..65 in light-side¦to lightnes 70»
  allow «lean-over-fat¦beading-risk» because "only a breath"
}
leaf halo { on jug   material «gold¦silver» }
varnish final { resin «damar¦ketone-resin¦dammar»   after «9 months¦2 weeks» }
target light-side «oklch(0.7 0.1 80)¦#e0c080» within «4¦9»
note "«A note.¦Another.»"
allow oily-rags because "«the studio has a fire bin¦bins»"
`;

export const RECORD = `record "«Harbour¦Old harbour»"
made «1640..1660¦1900..1910»
paint lead-white = «PW1¦PW6» in linseed
paint smalt = «PB32¦PB29» in linseed
paint dark = «unknown¦PBk9 in oil¦unknown in oil»
support oak-panel 30 x 42 cm
area sky 60 %
area water 40 %
ground priming { material «chalk-glue¦gypsum-glue»   film «120..180 µm¦unknown» }
imprimatura pink { «colour unknown¦colour pinkish¦colour lead-white¦colour dark¦»   film 8..12 µm }
drawing lines { material charcoal   film unknown }
layer sky-first { on sky   colour «lead-white + smalt¦2 lead-white + 1 smalt¦lead-white¦unknown¦lead-whit»   film 20..30 µm   evidence "«S1, SEM-EDX¦S1»" }
glaze sky-last { on «sky¦water»   colour «smalt¦dark + smalt¦unknown»   coats «unknown¦2¦»   film 6..10 µm   measured «lab(58 -6 -18)¦lab(40 -6 -18)» in sky }
retouching cloud { on sky   «colour lead-white¦colour unknown¦colour lead-wite»   made «1880..1900¦1780» }
deposit grime { film «5 µm¦unknown» }
varnish old { resin «damar¦unknown¦mastic»   made 1955 }
sample «S1¦"edge, left"» in «sky¦water» {
  priming «140 µm¦500 µm»
  pink 10 µm
  «sky-first 26 µm¦sky-last 26 µm»
}
`;

export const PALETTE = `paint raw-umber = PBr7 «raw-umber¦burnt-umber» in «linseed¦walnut»
paint bone-black = PBk9 in linseed
`;

type Slots = readonly (readonly string[])[];
export interface Template {
  readonly fixed: readonly string[];
  readonly slots: Slots;
}

export function template(text: string): Template {
  const parts = text.split(/[«»]/);
  return {
    fixed: parts.filter((_, i) => i % 2 === 0),
    slots: parts.filter((_, i) => i % 2 === 1).map((s) => s.split('¦')),
  };
}

export const filled = ({ fixed, slots }: Template, chosen: readonly number[]): string =>
  fixed.map((text, i) => text + (slots[i]?.[chosen[i] ?? 0] ?? '')).join('');

/** Numbers between 0 and 1 that are the same on every run (Park and Miller, CACM 31 (1988) 1192). */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
