/**
 * The eighty pigments painters use most: those that most makers of artists' oil colour sell as a colour of one pigment,
 * or that painting from the 17th century on cannot be told without (common practice; nobody counted sales).
 */
export const USUAL: readonly string[] = [
  // whites
  ...['PW1', 'PW4', 'PW6'],
  // yellows and oranges
  ...['PY43', 'PY42', 'PY42 transparent', 'PY35', 'PY37', 'PY40', 'PY41', 'PBr24', 'PY53', 'PY184'],
  ...['PY1', 'PY3', 'PY65', 'PY74', 'PY83', 'PY110', 'PY129', 'PY150', 'PY151', 'PY154'],
  ...['PO20', 'PO62', 'PO73'],
  // reds and violets
  ...['PR101', 'PR101 transparent', 'PR101 light', 'PR101 violet', 'PR102', 'PR106', 'PR108', 'PR83', 'NR9'],
  ...['PR112', 'PR122', 'PR149', 'PR170', 'PR177', 'PR179', 'PR188', 'PR254', 'PR255', 'PR264'],
  ...['PV14', 'PV15', 'PV16', 'PV19', 'PV19 red', 'PV19 violet', 'PV23'],
  // blues and greens
  ...['PB29', 'PB28', 'PB35', 'PB36', 'PB36 turquoise', 'PB27', 'PB15:1', 'PB15:3', 'PB15:6', 'PB33', 'PB60'],
  ...['PG17', 'PG18', 'PG7', 'PG36', 'PG19', 'PG50', 'PG23'],
  // browns and blacks
  ...['PBr7 raw-sienna', 'PBr7 burnt-sienna', 'PBr7 raw-umber', 'PBr7 burnt-umber', 'NBr8'],
  ...['PBk6', 'PBk7', 'PBk8', 'PBk9', 'PBk11'],
];
