use crate::shape::Shape::{Block, Chuck, Gear, Ring, Rounded, Screw};
use crate::sketch::Part::{Hidden, In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "dividing head",
    seen: "from the front, the worm behind the index plate drawn through it",
    size: (230, 150),
    parts: &[
        In(Block, [20, 134, 170, 14]),
        Outline(&[(40, 134), (40, 60), (60, 30), (142, 30), (158, 60), (158, 134)]),
        In(Block, [158, 54, 12, 26]),
        In(Chuck, [170, 38, 34, 58]),
        Hidden(&[(40, 58), (158, 58)]),
        Hidden(&[(40, 76), (158, 76)]),
        In(Rounded, [28, 54, 12, 26]),
        In(Gear, [112, 44, 42, 42]),
        In(Screw, [118, 86, 30, 10]),
        // The index plate with its rows of holes, the crank and its pin.
        In(Ring, [46, 72, 60, 60]),
        In(Ring, [72, 98, 8, 8]),
        Line(&[(76, 80), (76, 82)]),
        Line(&[(98, 102), (96, 102)]),
        Line(&[(54, 102), (56, 102)]),
        Line(&[(60, 86), (62, 88)]),
        Line(&[(92, 86), (90, 88)]),
        Line(&[(60, 118), (62, 116)]),
        Line(&[(76, 124), (76, 122)]),
        Outline(&[(72, 106), (92, 122), (97, 116), (80, 100)]),
        In(Ring, [87, 112, 12, 12]),
    ],
    spots: &[
        ("spindle", &[(162, 60)]),
        ("worm and wheel", &[(133, 88)]),
        ("worm shaft", &[(76, 102)]),
        ("index plate and pin", &[(93, 118)]),
    ],
};
