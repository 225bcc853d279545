use crate::shape::Shape::{Block, Dial, Ribbed, Ring};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "measuring tools",
    seen: "from the front: a micrometer, a dial indicator and a height gauge",
    size: (310, 170),
    parts: &[
        // The micrometer.
        Outline(&[(8, 20), (22, 20), (22, 56), (36, 72), (56, 72), (66, 60), (66, 20), (82, 20), (82, 66), (64, 90), (28, 90), (8, 66)]),
        In(Block, [22, 26, 6, 10]),
        In(Block, [46, 27, 36, 8]),
        In(Block, [82, 24, 22, 14]),
        In(Ribbed, [98, 20, 30, 22]),
        In(Block, [128, 26, 10, 10]),
        // The dial indicator.
        In(Dial, [88, 66, 64, 64]),
        In(Block, [116, 56, 8, 10]),
        In(Block, [115, 130, 10, 14]),
        In(Block, [118, 144, 4, 18]),
        In(Ring, [117, 161, 6, 6]),
        // The height gauge.
        In(Block, [196, 152, 92, 16]),
        In(Block, [232, 4, 14, 148]),
        Line(&[(238, 4), (238, 152)]),
        In(Block, [222, 70, 34, 38]),
        Outline(&[(222, 84), (178, 90), (178, 96), (222, 98)]),
        In(Ring, [256, 82, 12, 12]),
    ],
    spots: &[
        ("micrometer screws", &[(90, 31)]),
        ("dial-indicator pivots", &[(120, 98)]),
        ("height-gauge column", &[(239, 40)]),
    ],
};
