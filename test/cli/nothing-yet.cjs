// Standard input as a pipe that was left non-blocking and has nothing at the first looks: loaded before the program.
const fs = require('node:fs');
const { syncBuiltinESMExports } = require('node:module');

let looks = 0;
for (const name of ['readSync', 'readFileSync']) {
  const read = fs[name];
  fs[name] = (file, ...given) => {
    if (file === 0 && ++looks <= 3)
      throw Object.assign(new Error(`EAGAIN: resource temporarily unavailable, ${name}`), { code: 'EAGAIN' });
    return read(file, ...given);
  };
}
syncBuiltinESMExports();
