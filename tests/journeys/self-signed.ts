/** A throw-away certificate for localhost, made on the spot: X.509 (RFC 5280) in DER with what Node alone offers. */
import { createSign, generateKeyPairSync } from 'node:crypto';

const der = (tag: number, ...parts: readonly Buffer[]): Buffer => {
  const body = Buffer.concat(parts);
  const size =
    body.length < 128
      ? Buffer.from([body.length])
      : Buffer.from([0x82, body.length >> 8, body.length & 0xff]);
  return Buffer.concat([Buffer.from([tag]), size, body]);
};
const sequence = (...parts: readonly Buffer[]) => der(0x30, ...parts);
const time = (at: Date) => der(0x17, Buffer.from(`${at.toISOString().slice(2, 19).replace(/[-:T]/g, '')}Z`));
/** OBJECT IDENTIFIERs: ecdsa-with-SHA256, commonName, subjectAltName. */
const ECDSA_SHA256 = Buffer.from('06082a8648ce3d040302', 'hex');
const COMMON_NAME = Buffer.from('0603550403', 'hex');
const ALT_NAME = Buffer.from('0603551d11', 'hex');

export function selfSigned(): { cert: string; key: string } {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const algorithm = sequence(ECDSA_SHA256);
  const name = sequence(der(0x31, sequence(COMMON_NAME, der(0x0c, Buffer.from('localhost')))));
  const altName = der(0x04, sequence(der(0x82, Buffer.from('localhost'))));
  const body = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    algorithm,
    name,
    sequence(time(new Date(Date.now() - 86_400_000)), time(new Date(Date.now() + 86_400_000))),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    der(0xa3, sequence(sequence(ALT_NAME, altName))),
  );
  const signature = createSign('sha256').update(body).sign(privateKey);
  const certificate = sequence(body, algorithm, der(0x03, Buffer.from([0]), signature));
  const lines = certificate
    .toString('base64')
    .match(/.{1,64}/g)!
    .join('\n');
  return {
    cert: `-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`,
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }) as string,
  };
}
