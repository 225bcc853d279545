use crate::shape::Shape::{Block, Ring, Rounded, Screw};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "bench vice",
    seen: "from the side, opened",
    size: (260, 120),
    parts: &[
        In(Block, [110, 106, 140, 12]),
        // The slide under the moving jaw, and the screw in it.
        In(Block, [62, 50, 178, 28]),
        In(Screw, [40, 59, 180, 9]),
        In(Block, [196, 54, 24, 19]),
        // The fixed jaw.
        Outline(&[
            (140, 106),
            (140, 78),
            (132, 66),
            (132, 8),
            (152, 8),
            (152, 32),
            (180, 44),
            (236, 44),
            (236, 60),
            (152, 60),
            (152, 78),
            (220, 78),
            (220, 106),
        ]),
        In(Block, [126, 8, 6, 22]),
        // The moving jaw.
        Outline(&[(92, 8), (72, 8), (72, 30), (50, 48), (50, 80), (92, 80)]),
        In(Block, [92, 8, 6, 22]),
        In(Block, [42, 52, 8, 23]),
        In(Rounded, [24, 52, 18, 23]),
        Line(&[(33, 20), (33, 108)]),
        In(Ring, [29, 14, 8, 8]),
        In(Ring, [29, 104, 8, 8]),
    ],
    spots: &[("screw and nut", &[(180, 64)]), ("slide", &[(112, 53)]), ("screw collar", &[(46, 63)])],
};
