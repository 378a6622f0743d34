import { describe, expect, it } from 'vitest';
import { freestPlace, placesAround, placesBesideHorizontal } from '../../src/plots/label-place.ts';

const frame = { width: 400, height: 300 };

describe('a label', () => {
  it('stands at the first place when nothing is in the way', () => {
    const places = placesBesideHorizontal(150, 80, 18, frame.width);
    expect(freestPlace(places, [], [], frame)).toBe(places[0]);
  });

  it('goes to another place when a marker is there', () => {
    const places = placesAround(200, 150, 80, 18);
    const place = freestPlace(places, [[230, 140]], [], frame);
    expect(place.anchor).toBe('end');
  });

  it('would rather hide a marker than another label', () => {
    const [first, second] = placesBesideHorizontal(150, 80, 18, frame.width);
    if (second === undefined) throw new Error('there are several places');
    expect(freestPlace([first, second], [[second.left + 5, second.top + 5]], [first], frame)).toBe(second);
  });

  it('stays inside of the frame', () => {
    const place = freestPlace(placesAround(395, 295, 80, 18), [], [], frame);
    expect(place).toMatchObject({ anchor: 'end', top: 295 - 18 - 5 });
  });
});
