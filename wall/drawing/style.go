package drawing

// palette is set for screen and print. No meaning rests on a color alone: every kind of line has its
// own dashes or weight, every kind of area its own hatch, every kind of mark its own shape.
const palette = `
:root{color-scheme:light dark;--paper:#fff;--ink:#15191e;--soft:#4d5661;--rule:#b9c1ca;--wall:#dcd6c8;--board:#fffdf8;
--bead:#aab3bd;--groove:#6c7783;--start:#0b5d86;--saw:#a03c00;--flaw:#6d2b80;--tint:#f1efe8}
@media screen and (prefers-color-scheme:dark){:root{--paper:#14181c;--ink:#edf0f2;--soft:#b3bcc6;--rule:#4b545e;--wall:#39362e;--board:#20262c;
--bead:#59646f;--groove:#93a0ad;--start:#74c4ec;--saw:#ffa566;--flaw:#dba6ec;--tint:#1d2329}}
`

// Style returns the style sheet of every drawing: its colors follow the reader's choice of light or
// dark. A file of [Picture.SVG] has it already.
func Style() string { return palette + drawingStyle }

const drawingStyle = `
.drawing{font-family:Arial,Helvetica,"Liberation Sans",sans-serif;font-size:11px;fill:var(--ink)}
.drawing .paper{fill:var(--paper)}
.drawing .small{font-size:10px}
.drawing .soft{fill:var(--soft)}
.drawing .big{font-size:17px;font-weight:700}
.drawing .bold{font-weight:700}
.drawing .halo{stroke:var(--board);stroke-width:4px;paint-order:stroke;stroke-linejoin:round}
.drawing .wall{fill:var(--wall);stroke:var(--soft);stroke-width:1}
.drawing .board{fill:var(--board)}
.drawing .edge{fill:none;stroke:var(--ink);stroke-width:1}
.drawing .bead{fill:var(--bead)}
.drawing .groove{fill:var(--groove)}
.drawing .opening{stroke:var(--ink);stroke-width:1.2}
.drawing .hatch{stroke:var(--soft);stroke-width:.8}
.drawing .dots{stroke:var(--rule);stroke-width:2;stroke-dasharray:1 5}
.drawing .seam{stroke:var(--ink);stroke-width:2.4;fill:none}
.drawing .datum{stroke:var(--start);stroke-width:1.2;stroke-dasharray:12 3 2 3;fill:none}
.drawing .start{stroke:var(--start);stroke-width:1.4;fill:none}
.drawing .startmark{fill:var(--start)}
.drawing .starttext{fill:var(--start);font-weight:700}
.drawing .pole{stroke:var(--ink);stroke-width:1;fill:none}
.drawing .lead{stroke:var(--soft);stroke-width:.7;fill:none}
.drawing .ext{stroke:var(--soft);stroke-width:.7;stroke-dasharray:2 2;fill:none}
.drawing .cut{stroke:var(--saw);stroke-width:1.8;stroke-dasharray:7 3;fill:none}
.drawing .cutnumber{fill:var(--paper);stroke:var(--saw);stroke-width:1.4}
.drawing .cuttext{fill:var(--saw);font-weight:700;font-size:10px}
.drawing .flaw{fill:var(--paper);stroke:var(--flaw);stroke-width:1.4}
.drawing .flawdot{fill:var(--flaw)}
.drawing .flawtext{fill:var(--flaw);font-weight:700;font-size:10px}
.drawing .flawlead{stroke:var(--flaw);stroke-width:.9;stroke-dasharray:1 2.5;fill:none}
.drawing .drill{fill:var(--paper);stroke:var(--saw);stroke-width:1.2}
.drawing .offcut{stroke:var(--soft);stroke-width:1;stroke-dasharray:1.5 2.5}
.drawing .tag{fill:var(--board);stroke:var(--ink);stroke-width:1}
.drawing .template,.drawing .cutline{stroke:var(--ink);stroke-width:1.6;fill:none}
.drawing .template{stroke-width:2}
.drawing .templatedrill{stroke:var(--ink);stroke-width:.8;fill:none}
.drawing .templatedot{fill:var(--ink)}
.drawing .templateframe{fill:none;stroke:var(--soft);stroke-width:.6}
.drawing .templateboard{opacity:.6}
.drawing .templateedge{fill:none;stroke:var(--ink);stroke-width:3;stroke-dasharray:14 4 2 4}
.drawing .tile{stroke:var(--saw);stroke-width:1;stroke-dasharray:5 2}
`
