/** What rules are about: a folder of rules each, and a part of the rules page. In the order of that page. */
export const themes = {
  language: {
    title: 'Language and names',
    about: 'Slips of the pen: what cannot be read, resolved or added up.',
  },
  'fat-and-lean': {
    title: 'Fat and lean',
    about: 'Whether each film is fat enough for the one beneath it.',
  },
  drying: {
    title: 'Drying',
    about: 'Whether each film is dry when the next is laid on it, and how long that takes.',
  },
  adhesion: {
    title: 'Adhesion and structure',
    about: 'Whether the layers hold on to one another and to their support.',
  },
  glazes: {
    title: 'Glazes and order',
    about: 'What will be seen of each layer. These rest on predicted colours, each with its radius.',
  },
  lasting: {
    title: 'Lasting',
    about: 'What light, time and the neighbours will do to the colours.',
  },
  health: {
    title: 'Health',
    about:
      'Poison, vapour and fire. They defer to the maker’s safety data sheet, to the codes of your place and to licensed practice.',
  },
  records: {
    title: 'Records',
    about: 'Whether what was observed of an old painting agrees with itself. Records take no craft advice.',
  },
} as const;

export type Theme = keyof typeof themes;
