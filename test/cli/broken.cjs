// A fault inside the program: loaded before it (--require).
String.prototype.padEnd = () => {
  throw new TypeError('a broken wheel');
};
