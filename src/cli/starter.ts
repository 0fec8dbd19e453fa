/**
 * A starter job with every key explained. A test holds it against the schema: it must read
 * without problems and name every key.
 *
 * @param name - of the job
 * @param schema - file name of the JSON Schema beside it
 */
export function starterJob(name: string, schema: string): string {
	return `# yaml-language-server: $schema=./${schema}
# A camber job: one neck, its wire, the sheet, the machine, and the tools to make.
# Lengths: 648 mm, 64.8 cm, 25.5 in, 25 1/2 in, 1/64 in. A number without unit takes "units".
# Stations along the neck: nut, last-fret, saddle, a fret number (7 or 7.5), or a length
# with its unit from the nut (120 mm). Replace the values; lines behind # are optional.
format: 1                       # version of this form
job: ${name}
# date: 1 March                 # printed in the title block if given
# units: mm                     # mm, cm, m or in: what a number without unit means

neck:
  scale: 25 1/2 in              # along the centre line; twice nut to fret 12
  # scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}   # fanned, along the outer strings
  frets: 22                     # a zero fret not counted
  # division: 12                # 19, 31, rule-of-18, {cents: [100, 200]}, {ratios: [9/8, 5/4]},
  #                             # {positions: [36.35 mm, 70.66 mm]}
  radius: 12 in                 # or flat, or {nut: 10 in, last-fret: 14 in}
  width: {nut: 43 mm, last-fret: 56 mm}   # square to the centre line; or one length
  strings:                      # needed for fanned frets and for string lines
    count: 6                    # single strings; or courses: 4 with pair-gap: 1.8 mm
    at-nut: 35.5 mm             # outer string centre to outer string centre
    at-saddle: 52 mm
  # handed: right               # left mirrors the geometry, never the lettering
  # zero-fret: false            # true: a fret stands at the nut's place
  # nut-shift: 0 mm             # actual nut face from the theoretical nut, + toward the saddle
  # scale-uncertainty: 0 mm     # half the 95 % interval of the scale; widens the notches
  # binding: 0 mm               # thickness of the edge binding; slots end blind inside it
  markers: [3, 5, 7, 9, {12: double}, 15, 17, 19, 21]
  # readings:                   # instead of scale, radius and width: "camber fit" explains them
  #   slots: {1: 36.5 mm, 5: 162.5 mm, 12: [324 mm, 323.5 mm], 22: 466 mm}   # nut's end to slot; or a CSV file
  #   resolution: 0.5 mm        # smallest step of that rule
  #   nut-end: unknown          # intact or filed, where you know
  #   use: law                  # readings: every slot as it was read
  #   bass-slots: {1: 38.5 mm, 12: 343 mm}      # fanned: along the outer strings
  #   treble-slots: {1: 36.5 mm, 12: 324 mm}
  #   from: nut                 # square-line: both read from one line square to the centre line
  #   radius: [{at: nut, chord: 40 mm, sagitta: 0.66 mm}, {at: last-fret, feet: 40 mm, dial: 0.57 mm}]
  #   width: {nut: [43.0 mm, 43.1 mm], last-fret: 56 mm}
  #   straightness:             # gaps under a straightedge: the relief
  #     gaps: {5: 0.10 mm, 8: 0.15 mm, 12: 0.10 mm}
  #     along: centre           # bass or treble
  #     on: wood                # crowns
  #     from: nut               # where it touches
  #     to: last-fret
  #     resolution: 0.05 mm
  #     straightedge: {material: steel, height: 30 mm, length: 500 mm}   # for its own sag
  #   fret-heights:             # crown heights, two or three across each fret
  #     heights: {1: [1.10 mm, 1.05 mm, 1.10 mm], 12: 1.10 mm, 22: 1.12 mm}
  #     resolution: 0.02 mm
  #     least: 0.8 mm           # crown that is worth keeping
  #     relief: 0 mm            # that the tops are to keep
  # use: readings               # numbers: readings stand as the record, numbers count

wire:                           # measure a cut-off with a caliper
  crown-width: 2.7 mm           # or several readings: [2.69 mm, 2.71 mm]
  crown-height: 1.3 mm
  tang-width: 0.53 mm           # the tang without its beads
  tang-depth: 1.6 mm

stock: {material: acrylic, thickness: 3 mm}   # acrylic, plywood, mdf, steel, aluminium, card
# stock: {material: plywood, thickness: 3 mm, grain: x}    # parts are not turned on the bed

machine:
  kind: laser                   # laser, mill or printer: decides the cautions
  tolerance: 0.05 mm            # how far off a cut edge may be
  kerf: 0                       # width of a laser's cut; measure it: make a kerf-coupon
  # bed: 600 x 400 mm           # parts are laid out on it, a file for every sheet
  # margin: 5 mm                # strip along the bed's edges that stays empty
  # spacing: 2 mm               # least distance between two parts on the bed
  # speeds: {cut: 12 mm/s, score: 80 mm/s, engrave: 80 mm/s, travel: 300 mm/s}   # for the time
  # tabs: {count: 4, width: 1.5 mm}        # hold parts in the sheet
  # cutter: 3.175 mm            # a mill's: inside features are checked against it
  # relief: none                # floor: a mill cuts deeper floors instead of round corners
  # stretch: {x: 1, y: 1}       # measured over nominal along the bed's axes
  # pens:                       # colour and line width per operation in the files
  #   cut: {colour: "#0b7a75", width: 0.25 mm}
  #   score: {colour: "#b5530d"}
  #   engrave: {colour: "#5b3fa0"}
  #   tab: {colour: "#b02a6f"}
  #   reference: {colour: "#5f6673"}

# paper: A4                     # or Letter, A3, 210 x 330 mm, roll 610 mm: a PDF besides
# printer: {across: 1, along: 1, margin: 6 mm, overlap: 15 mm}   # what it makes of 1; make a print-check

# shop: {temperature-swing: 10 K}    # widens the straightedge's notches
# lettering: {font: my-font.ttf}     # outlines of a font instead of single strokes

make:                           # "camber tools" lists every tool with its settings
  - notched-straightedge
  - radius-gauge: {faces: [concave, convex]}
  - slot-strip
  # - shop-sheet                # the neck's table, wire to order, radii, strings on a page
  # - print-check               # rules to read: what the printer makes of a millimetre
  # - radius-gauge: {name: steel-gauge, radii: [12 in], stock: {material: steel, thickness: 0.5 mm}}
`;
}
