/**
 * The works that the tables' sources cite: how each is known among the source texts, and its reference. Authors, titles
 * and years as the works, their pages or library catalogues (from memory) give them; what is not known is left out.
 */
export interface Work {
  /** words by which the source texts name it */
  readonly named: RegExp;
  readonly reference: string;
}

export const WORKS: readonly Work[] = [
  {
    named: /Gettens & Stout/,
    reference: 'Gettens, R. J., and Stout, G. L.: *Painting Materials: A Short Encyclopaedia*, 1942',
  },
  {
    named: /Gardner/,
    reference:
      'Gardner, H. A.: *Paint Technology and Tests*, 1911 (in the public domain; Project Gutenberg, e-text 37420)',
  },
  {
    named: /Church, /,
    reference:
      'Church, A. H.: *The Chemistry of Paints and Painting*, 4th edition, 1915 (in the public domain)',
  },
  { named: /Toch, /, reference: 'Toch, M.: *Materials for Permanent Painting*, 1911 (in the public domain)' },
  {
    named: /Uebele/,
    reference: 'Uebele, C. L.: *Paint Making and Color Grinding*, 1913 (in the public domain)',
  },
  {
    named: /Laurie/,
    reference: 'Laurie, A. P.: *The Painter’s Methods and Materials*, read in a scanned copy',
  },
  {
    named: /Massey/,
    reference:
      'Massey, R.: *Formulas for Painters*, “Ratios of dry pigment to oil”, as a web page copies the table',
  },
  { named: /Wehlte/, reference: 'Wehlte, K.: *The Materials and Techniques of Painting*, 1975' },
  { named: /Kay, /, reference: 'Kay, R.: *The Painter’s Guide to Studio Methods and Materials*, 1983' },
  { named: /Saitzyk/, reference: 'Saitzyk, S. L.: *Art Hardware*, 1987, revised 1998, “Drying Rates”' },
  {
    named: /Mecklenburg/,
    reference:
      'Mecklenburg, M. F., and Tumosa, C. S., Smithsonian Museum Conservation Institute: mechanical tests of oil films over 28 years, read in a secondary article',
  },
  {
    named: /Smithsonian MCI, “/,
    reference: 'Smithsonian Museum Conservation Institute: “The drying of oils and oil paint”',
  },
  {
    named: /Surface Coatings International/,
    reference:
      '“Determination of changes in mass and volume of linseed oil during drying”, *Surface Coatings International Part B*, abstract',
  },
  {
    named: /EU CLP Regulation/,
    reference:
      'Regulation (EC) No 1272/2008 (CLP), Annex VI, table 3, as of the 17th adaptation (workbook of the European Chemicals Agency, December 2021)',
  },
  { named: /ECHA, EC Inventory/, reference: 'European Chemicals Agency: EC Inventory' },
  { named: /TSCA Inventory/, reference: 'US Environmental Protection Agency: TSCA Inventory, August 2021' },
  {
    named: /NCIS list/,
    reference: 'Republic of Korea, National Chemicals Information System: list of chemicals, 4 May 2022',
  },
  { named: /Canada, Domestic/, reference: 'Canada: Domestic Substances List, 14 June 2022' },
  {
    named: /Australian Inventory/,
    reference: 'Australian Inventory of Industrial Chemicals, 10 February 2022',
  },
  {
    named: /Safe Work Australia/,
    reference: 'Safe Work Australia: Hazardous Chemical Information System (HCIS)',
  },
  {
    named: /New Zealand EPA/,
    reference: 'New Zealand Environmental Protection Authority: Inventory of Chemicals, December 2021',
  },
  {
    named: /Japan, NITE/,
    reference: 'Japan, National Institute of Technology and Evaluation: GHS classifications, March 2022',
  },
  {
    named: /NIOSH (?:Pocket Guide|IDLH|guideline)/,
    reference:
      'US National Institute for Occupational Safety and Health (NIOSH): *Pocket Guide to Chemical Hazards*, and IDLH documentation (cdc.gov/niosh)',
  },
  {
    named: /OSHA chemical sampling/,
    reference:
      'US Occupational Safety and Health Administration (OSHA): chemical sampling information, Stoddard solvent; petroleum distillates (naphtha)',
  },
  {
    named: /state’s agriculture/,
    reference: 'guidance on ammonia by the agriculture department of a US state, quoting NIOSH and OSHA',
  },
  {
    named: /ACGIH/,
    reference: 'American Conference of Governmental Industrial Hygienists (ACGIH): TLV documentation pages',
  },
  { named: /Haz-Map/, reference: 'Haz-Map: Terpenes, quoting ACGIH (haz-map.com)' },
  {
    named: /SCOEL/,
    reference:
      'EU Scientific Committee on Occupational Exposure Limits: recommendation SCOEL/SUM/87 on white spirit, as DOHSBase quotes it (dohsbase.nl)',
  },
  {
    named: /TRGS 900/,
    reference:
      'Germany, Technical Rules for Hazardous Substances: TRGS 900, as GisChem, a lexicon and safety data sheets quote it',
  },
  { named: /NTP Chemical/, reference: 'US National Toxicology Program: Chemical Repository, ethanol' },
  {
    named: /National Academies/,
    reference: 'US National Academies: laboratory chemical safety summary, ethanol',
  },
  {
    named: /Court of Justice/,
    reference: 'Court of Justice of the European Union: judgment of 1 August 2025, C-71/23 P and C-82/23 P',
  },
  {
    named: /asktheeu/,
    reference:
      'a request for documents to the European Chemicals Agency, 21 January 2016, reciting REACH, Annex XVII, points 16 and 17 (asktheeu.org); UK House of Lords, written answer, 28 March 1991, vol. 527 cc. 70–71WA; *Encyclopaedia Britannica*, White lead (an excerpt)',
  },
  {
    named: /Official Journal/,
    reference: '*Official Journal of the European Union*, C 337, 14 September 2016, p. 3',
  },
  {
    named: /European Commission’s/,
    reference: 'a news note on the European Commission’s authorisation decisions (arcerion.com)',
  },
  {
    named: /CAMEO/,
    reference:
      'Museum of Fine Arts, Boston: CAMEO, Conservation and Art Materials Encyclopedia Online (cameo.mfa.org)',
  },
  {
    named: /KIK-IRPA/,
    reference:
      'Royal Institute for Cultural Heritage (KIK-IRPA), Brussels: glossary (pp.kikirpa.be/gloss), after Eastaugh and others, *Pigment Compendium*, 2004, and Perego, *Dictionnaire des matériaux du peintre*, 2005',
  },
  {
    named: /ARGOMED/,
    reference:
      'ARGOMED: glossary of conservation materials, in part after the Museum of Fine Arts, Boston, 2000',
  },
  { named: /Pigments through the Ages/, reference: '*Pigments through the Ages* (webexhibits.org)' },
  { named: /ColourLex/, reference: 'ColourLex (colourlex.com)' },
  { named: /National Gallery/, reference: 'National Gallery, London: glossary, lead white' },
  {
    named: /Getty Art/,
    reference: 'Getty Art & Architecture Thesaurus, scope notes, read in a Catalan mirror',
  },
  { named: /CHSOS/, reference: 'CHSOS, Cultural Heritage Science Open Source: PB33 (chsopensource.org)' },
  { named: /Kraft/, reference: 'Kraft, 2019, on Prussian blue: abstract' },
  {
    named: /Wallquist/,
    reference:
      'Wallquist, O., and Lenz, R., in *High Performance Pigments* (Wiley-VCH, 2009), ch. 11, read in a copy',
  },
  {
    named: /Botanical Artist/,
    reference: 'American Society of Botanical Artists: “Cadmium Yellow”, *The Botanical Artist* 17/1',
  },
  { named: /Boddy-Evans/, reference: 'Boddy-Evans, M.: profiles of artists’ pigments (a web page)' },
  { named: /PrintWiki/, reference: 'PrintWiki, an encyclopedia of print (printwiki.org)' },
  { named: /Wikipedia/, reference: 'Wikipedia, English and French, some of it read in mirrors' },
  { named: /Eclectic Light/, reference: 'The Eclectic Light Company: essays on pigments' },
  {
    named: /Mayer/,
    reference: 'an art dictionary’s entry citing Mayer, R.: *A Dictionary of Art Terms and Techniques*',
  },
  { named: /koldesign/, reference: 'an anonymous handbook text (koldesign.com/paint/e.html)' },
  {
    named: /refractiveindex\.info/,
    reference: 'refractiveindex.info database (CC0 1.0)',
  },
  {
    named: /Handbook of Mineralogy/,
    reference: '*Handbook of Mineralogy*, Mineral Data Publishing, 2001–2005, sheet on goethite',
  },
  {
    named: /Comptoir Géologique/,
    reference: 'Le Comptoir Géologique: mineral encyclopaedia, hydrocerussite (le-comptoir-geologique.com)',
  },
  {
    named: /spectrocrunch/,
    reference: 'De Nolf, W.: spectrocrunch, ESRF, 2017, list of compounds (MIT licence)',
  },
  { named: /Gooch/, reference: 'Gooch, J. W. (ed.): *Encyclopedic Dictionary of Polymers*, Springer' },
  { named: /Merck Index/, reference: '*The Merck Index*, as a public data page copies it' },
  { named: /Materia Medica/, reference: 'a *Textbook of Materia Medica*, on linseed and poppy oil' },
  { named: /chemstdy/, reference: '“Iodine number and its significance”, chemstdy.com, 2025' },
  {
    named: /glossary of evaporation/,
    reference: 'Interactive Learning Paradigms: glossary, evaporation rates',
  },
  { named: /fragrance/, reference: 'a fragrance reference, oil of spike lavender' },
  {
    named: /British Pharmacopoeia 2008/,
    reference: 'a monograph on methylated spirits (drugster.org), quoting the *British Pharmacopoeia*, 2008',
  },
  { named: /MITRA/, reference: 'MITRA, a forum on artists’ materials: “Mixing oils and alkyds”' },
  {
    named: /CIE 157/,
    reference: 'CIE 157:2004, *Control of Damage to Museum Objects by Optical Radiation*: from memory',
  },
  {
    named: /Salter/,
    reference:
      'Field’s *Chromatography*, rewritten by T. W. Salter, 1869 (in the public domain; Project Gutenberg, e-text 20915)',
  },
  {
    named: /CRC Handbook/,
    reference:
      '*CRC Handbook of Chemistry and Physics*, physical constants of inorganic compounds, read in an open compilation (the `chemicals` library, MIT licence)',
  },
  {
    named: /webmineral/,
    reference: 'Mineralogy Database (webmineral.com), read in an open compilation',
  },
  {
    named: /MacEvoy/,
    reference: 'MacEvoy, B.: guide to the pigments of water colours (handprint.com)',
  },
  {
    named: /Skalka|Coles, /,
    reference: 'Skalka, M., and Coles, D.: two books on the history of pigments, as pages quote them',
  },
  {
    named: /Cooley, /,
    reference: 'Cooley, A. J.: *Cyclopædia of Practical Receipts*, 6th edition (in the public domain)',
  },
  { named: /history of inorganic/, reference: 'a history of inorganic pigments (kraska.biz, a web page)' },
  { named: /trader’s history/, reference: 'a pigment trader’s history of organic pigments (a web page)' },
  { named: /retailer’s pigment/, reference: 'a retailer’s pigment reference (a web page, anonymous)' },
  {
    named: /technical magazine/,
    reference: 'a paint maker’s technical magazine, and readers’ letters to it',
  },
  {
    named: /paint laboratory’s/,
    reference: 'a paint laboratory’s studies of fading (their openings) and replies to painters',
  },
  {
    named: /Armstrong, /,
    reference: 'Armstrong, G. D.: *Cyclopedia of Painting*, 1908 (in the public domain)',
  },
  {
    named: /ASTM D4302/,
    reference: 'ASTM D4302, *Specification for Artists’ Oil, Resin-Oil, and Alkyd Paints*: from memory',
  },
  {
    named: /ASTM D281/,
    reference: 'ASTM D281, *Oil Absorption of Pigments by Spatula Rub-out*: from memory',
  },
];
