use crate::shape::Shape::{Block, HandwheelSide, Screw, Table};
use crate::sketch::Part::{Hidden, In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "rotary table",
    seen: "from the side, with worm and wheel drawn through the body",
    size: (270, 120),
    parts: &[
        In(Block, [10, 104, 200, 14]),
        Outline(&[(24, 104), (30, 44), (190, 44), (196, 104)]),
        In(Table, [20, 14, 180, 22]),
        Outline(&[(44, 36), (176, 36), (176, 44), (44, 44)]),
        Hidden(&[(94, 14), (94, 104)]),
        Hidden(&[(126, 14), (126, 104)]),
        In(Block, [64, 62, 92, 12]),
        Line(&[(74, 62), (74, 74)]),
        Line(&[(84, 62), (84, 74)]),
        Line(&[(136, 62), (136, 74)]),
        Line(&[(146, 62), (146, 74)]),
        In(Screw, [92, 76, 40, 12]),
        In(Block, [132, 79, 80, 6]),
        In(Block, [190, 70, 30, 24]),
        In(HandwheelSide, [220, 56, 32, 52]),
    ],
    spots: &[("table face bearing", &[(54, 40)]), ("worm and wheel", &[(112, 75)]), ("worm shaft", &[(205, 82)])],
};
