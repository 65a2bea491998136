// Colour by value: ten bands of the map "cividis", whose order is the same for any colour vision.
// Source: Nunez, Anderton, Renslow, "Optimizing colormaps with consideration for color vision deficiency", PLOS ONE
// 13(7), 2018.
import { interpolateCividis } from "d3-scale-chromatic";
import { DataTexture, NearestFilter, RGBAFormat, SRGBColorSpace } from "three";

export const bands = 10;

export function bandColour(band: number): string {
  return interpolateCividis((band + 0.5) / bands);
}

/** The bands as a texture to be read at u = value / greatest. */
export function bandTexture(): DataTexture {
  const pixels = new Uint8Array(bands * 4);
  for (let i = 0; i < bands; ++i) {
    const parts = bandColour(i).match(/\d+/g) ?? [];
    pixels.set([...parts.map(Number), 255], i * 4);
  }
  const texture = new DataTexture(pixels, bands, 1, RGBAFormat);
  texture.colorSpace = SRGBColorSpace;
  texture.minFilter = texture.magFilter = NearestFilter;
  texture.needsUpdate = true;
  return texture;
}
