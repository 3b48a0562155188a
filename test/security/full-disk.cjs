// A disk that is full after ten bytes: loaded before the command line (--require).
const fs = require('node:fs');
const { syncBuiltinESMExports } = require('node:module');

fs.writeFileSync = (file, text) => {
  if (typeof file === 'number') fs.writeSync(file, String(text).slice(0, 10));
  throw Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' });
};
syncBuiltinESMExports();
