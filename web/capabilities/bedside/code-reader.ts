/**
 * Reads codes from the camera's picture: with the browser's own detector (Shape Detection API) where it
 * has one that knows what wristbands and beds carry, else with the ZXing ponyfill. The ponyfill and its
 * WebAssembly come from this server, and only once a camera was opened.
 */
export interface CodeReader {
  /** What is in the picture now, as text; empty when there is nothing to read. */
  read(picture: ImageBitmapSource): Promise<readonly string[]>;
}

/** Printed on wristbands and at beds: matrix codes, and the line codes of older printers. */
const FORMATS = ['qr_code', 'data_matrix', 'aztec', 'code_128', 'code_39', 'pdf417'] as const;

interface Detector {
  detect(picture: ImageBitmapSource): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}

async function native(): Promise<Detector | null> {
  const found = (globalThis as { BarcodeDetector?: DetectorClass }).BarcodeDetector;
  if (!found) return null;
  try {
    const known = await found.getSupportedFormats();
    const formats = FORMATS.filter((format) => known.includes(format));
    return formats.includes('qr_code') ? new found({ formats }) : null;
  } catch {
    return null;
  }
}

/** The two packages must be of one version: a module knows the memory of its own WebAssembly alone. */
async function ponyfill(): Promise<Detector> {
  const [{ BarcodeDetector, prepareZXingModule }, { default: wasm }] = await Promise.all([
    import('barcode-detector/ponyfill'),
    import('zxing-wasm/reader/zxing_reader.wasm?url'),
  ]);
  prepareZXingModule({
    overrides: {
      locateFile: (path: string, prefix: string) => (path.endsWith('.wasm') ? wasm : prefix + path),
    },
  });
  return new BarcodeDetector({ formats: [...FORMATS] }) as Detector;
}

export async function openCodeReader(): Promise<CodeReader> {
  const detector = (await native()) ?? (await ponyfill());
  return {
    async read(picture) {
      const found = await detector.detect(picture);
      return found.map((code) => code.rawValue);
    },
  };
}

/** Why no camera can be opened here; null when one may be asked for. */
export function cameraBarred(): 'not-secure' | 'no-camera' | null {
  if (!window.isSecureContext) return 'not-secure';
  return 'mediaDevices' in navigator ? null : 'no-camera';
}
