/**
 * Colours that people with the common colour-vision deficiencies tell apart (okabe-2008),
 * darkened or lightened where thin lines need contrast. Lines also differ in dash and points in shape, so that print without
 * colour works. Dark is for screens only: paper stays white.
 */
export const STYLE = `.pw{font:14px system-ui,sans-serif;background:#fff}\
.pw .paper{fill:#fff}.pw text{fill:#222}.pw .quiet{fill:#555}.pw .over{paint-order:stroke;stroke:#fff;stroke-width:4px;stroke-linejoin:round}\
.pw .grid{stroke:#e2e2e2}.pw .axis{stroke:#555}\
.pw .line{fill:none;stroke-width:2;stroke-linejoin:round}\
.pw .c0{stroke:#0062a3}.pw .c1{stroke:#b34700;stroke-dasharray:7 3}.pw .c2{stroke:#00795a;stroke-dasharray:2 3}\
.pw .c3{stroke:#8a3d73;stroke-dasharray:9 3 2 3}.pw .c4{stroke:#555;stroke-dasharray:12 4}.pw .c5{stroke:#7a6100;stroke-dasharray:4 3 1 3}\
.pw .f0{fill:#0062a3}.pw .f1{fill:#b34700}.pw .f2{fill:#00795a}.pw .f3{fill:#8a3d73}.pw .f4{fill:#555}.pw .f5{fill:#7a6100}\
.pw .region{fill-opacity:.22;stroke:none}.pw .bar1{fill-opacity:.35;stroke:#b34700;stroke-width:1.5}\
.pw .band{fill:#0072b2;opacity:.1}.pw .rule{stroke:#222;stroke-dasharray:4 4;fill:none}.pw .gap{fill:#888;opacity:.22}\
@media screen and (prefers-color-scheme:dark){\
.pw{background:#14181c}.pw .paper{fill:#14181c}.pw text{fill:#eee}.pw .quiet{fill:#b5b5b5}.pw .over{stroke:#14181c}\
.pw .grid{stroke:#2b3239}.pw .axis{stroke:#a5a5a5}\
.pw .c0{stroke:#6cbcf0}.pw .c1{stroke:#f0a35e}.pw .c2{stroke:#3ed6a8}.pw .c3{stroke:#e29cc8}.pw .c4{stroke:#bbb}.pw .c5{stroke:#e3cf5b}\
.pw .f0{fill:#6cbcf0}.pw .f1{fill:#f0a35e}.pw .f2{fill:#3ed6a8}.pw .f3{fill:#e29cc8}.pw .f4{fill:#bbb}.pw .f5{fill:#e3cf5b}\
.pw .bar1{stroke:#f0a35e}.pw .band{fill:#6cbcf0;opacity:.16}.pw .rule{stroke:#eee}}`

/** How many looks there are. */
export const LOOKS = 6
