/** The lists of a layer of which nothing is said yet; new ones at every call, since a layer being read fills them. */
export const unsaid = () => ({
  on: [],
  except: [],
  areas: [],
  prepare: [],
  wipeOut: [],
  measured: [],
  evidence: [],
  allows: [],
  notes: [],
  fields: [],
});
