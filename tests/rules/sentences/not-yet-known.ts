/**
 * Sentences that stay English for now: what only a program or a proxy gets to read, and forms whose
 * holes the test cannot fill. The list may only shrink.
 */
export const NOT_YET_KNOWN: readonly string[] = [
  '"…"… is there twice.',
  'Look at the proxy or the program that sent it; a browser does not send such a thing.',
  'Send it again.',
  'Send one JSON object in UTF-8.',
  'Send one entry a command; a check with all its stages is far smaller.',
  'Send the body in one piece.',
  'Send the command as JSON with the header Content-Type: application/json.',
  'The address and the headers together are over 16 kB.',
  'The address has "%00" in it, which stands for no character.',
  'The address has a percent sign that stands for no character.',
  'The body cannot be read as JSON.',
  'The body is over … kB.',
  'The code is not right. … left on this device.',
  'The parts of the body carry too much beside it.',
  'The request did not arrive whole in time.',
  'The request has no JSON body.',
  'What arrived is not a request by the rules of HTTP.',
  'Write the address in UTF-8 and escape it once.',
  'cannot be read as JSON',
  'is not right at …',
  'names no group',
  'the session … …; it is …',
  'there is a field with a name of … characters, which is not known here',
  '… Nothing was stored.',
];
