// Reads the files of a ZIP archive, which is what a .vsix is.
// Source of the layout: PKWARE, APPNOTE.TXT (.ZIP File Format Specification), sections 4.3.7, 4.3.12 and 4.3.16.
import { inflateRawSync } from 'node:zlib';

/**
 * @param {Buffer} archive
 * @returns {{ name: string, size: number, packedSize: number, content: () => Buffer }[]} in the order of the archive's directory; folders left out
 */
export function readZip(archive) {
  const end = archive.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  if (end < 0) throw new Error('not a ZIP archive');
  const files = [];
  let at = archive.readUInt32LE(end + 16);
  for (let left = archive.readUInt16LE(end + 10); left > 0; left--) {
    if (archive.readUInt32LE(at) !== 0x02014b50) throw new Error('the directory of the ZIP archive is damaged');
    const method = archive.readUInt16LE(at + 10);
    const packedSize = archive.readUInt32LE(at + 20);
    const size = archive.readUInt32LE(at + 24);
    const nameLength = archive.readUInt16LE(at + 28);
    const local = archive.readUInt32LE(at + 42);
    const name = archive.toString('utf8', at + 46, at + 46 + nameLength);
    const content = () => {
      const start = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
      const packed = archive.subarray(start, start + packedSize);
      if (method === 0) return Buffer.from(packed);
      if (method === 8) return inflateRawSync(packed);
      throw new Error(`${name}: packed by method ${method}, which is not read here`);
    };
    if (!name.endsWith('/')) files.push({ name, size, packedSize, content });
    at += 46 + nameLength + archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32);
  }
  return files;
}
