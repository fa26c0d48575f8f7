import { element } from '../dom.ts';

interface Picture {
  readonly width: number;
  readonly height: number;
  /** JPEG in Base64. */
  readonly jpeg: string;
}

/** The decoded picture is used again at each drawing, so that it does not flicker. */
const decoded = new WeakMap<Picture, HTMLElement>();

export function pictureFigure(picture: Picture, caption: string): HTMLElement {
  const known = decoded.get(picture);
  if (known) return known;
  const image = element('img', { src: `data:image/jpeg;base64,${picture.jpeg}`, width: picture.width, height: picture.height, alt: caption });
  const figure = element('figure', { class: 'picture' }, image);
  decoded.set(picture, figure);
  return figure;
}
