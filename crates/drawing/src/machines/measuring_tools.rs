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
        In(Dial, [106, 68, 64, 64]),
        In(Block, [134, 58, 8, 10]),
        In(Block, [133, 132, 10, 14]),
        In(Block, [136, 146, 4, 16]),
        In(Ring, [135, 161, 6, 6]),
        // The height gauge.
        In(Block, [210, 152, 92, 16]),
        In(Block, [246, 4, 14, 148]),
        Line(&[(252, 4), (252, 152)]),
        In(Block, [236, 70, 34, 38]),
        Outline(&[(236, 84), (192, 90), (192, 96), (236, 98)]),
        In(Ring, [270, 82, 12, 12]),
    ],
    spots: &[("micrometer screws", &[(90, 31)]), ("dial-indicator pivots", &[(138, 100)]), ("height-gauge column", &[(249, 44)])],
};
