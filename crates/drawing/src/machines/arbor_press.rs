use crate::shape::Shape::{Block, Gear, Rack, Ring};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "arbor press",
    seen: "from the side, with the pinion drawn through the frame",
    size: (180, 210),
    parts: &[
        Outline(&[
            (20, 208),
            (20, 184),
            (96, 180),
            (116, 160),
            (116, 84),
            (100, 70),
            (40, 70),
            (40, 26),
            (120, 26),
            (156, 60),
            (156, 180),
            (170, 190),
            (170, 208),
        ]),
        In(Block, [60, 6, 26, 120]),
        In(Rack, [86, 6, 7, 112]),
        In(Gear, [91, 34, 28, 28]),
        Line(&[(109, 44), (160, 4)]),
        In(Ring, [155, 0, 9, 9]),
        Outline(&[(40, 30), (60, 30), (60, 66), (40, 66)]),
        In(Block, [64, 126, 18, 12]),
        In(Block, [34, 168, 70, 14]),
    ],
    spots: &[("ram rack and pinion", &[(90, 40)]), ("ram guides", &[(60, 60)]), ("pinion shaft", &[(105, 48)])],
};
