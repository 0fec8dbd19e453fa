/** Largest file that is read, bytes: over ten times the largest that is written here. */
export const MOST_BYTES = 8 * 1024 * 1024;

/** Most opening and closing tags of an SVG: its parser needs 12 µs and over a kilobyte for each. */
export const MOST_TAGS = 100_000;

/** Deepest nesting of an SVG's elements. */
export const DEEPEST = 100;

/** Most lines of a DXF: two for every group. */
export const MOST_LINES = 1_000_000;

/** Most corners that all curves of a file together are taken apart into. */
export const MOST_SAMPLES = 500_000;

/** Coordinates are nearer than this to the origin, mm: ten kilometres. */
export const FARTHEST = 1e7;

/** Arcs with a larger bulge miss a full circle by less than a millionth of a turn. */
export const MOST_BULGE = 1e6;

/** How far a chain of lines may be from the curve it stands for, mm. */
export const CURVE_ERROR = 1e-4;

/** Two pieces of an exploded path belong together from here on, mm: nine decimals of a degree. */
export const JOINT = 1e-5;

/** Most pages of a PDF: a roll of ten metres on A4 has fewer. */
export const MOST_PAGES = 500;
