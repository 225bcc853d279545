use crate::shape::Shape::{Block, HandwheelSide, Motor, Ring, Rounded, Screw, Stand, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "horizontal bandsaw",
    seen: "from the front, the arm raised a little",
    size: (310, 196),
    parts: &[
        In(Stand, [50, 134, 220, 60]),
        In(Block, [34, 120, 250, 14]),
        Outline(&[(262, 120), (262, 92), (290, 92), (290, 120)]),
        // The arm with its two wheels and the blade.
        Outline(&[
            (12, 60),
            (12, 18),
            (28, 2),
            (286, 2),
            (302, 18),
            (302, 84),
            (286, 100),
            (236, 100),
            (222, 52),
            (90, 52),
            (82, 76),
            (28, 76),
        ]),
        In(Wheel, [20, 8, 62, 62]),
        In(Wheel, [234, 22, 62, 62]),
        Line(&[(51, 8), (265, 22)]),
        Line(&[(51, 70), (265, 84)]),
        In(Block, [94, 48, 12, 34]),
        In(Block, [196, 48, 12, 40]),
        In(Screw, [2, 35, 20, 8]),
        In(Rounded, [0, 28, 6, 22]),
        In(Rounded, [252, 40, 26, 26]),
        In(Motor, [136, 134, 56, 26]),
        // The vise.
        In(Ring, [142, 88, 32, 32]),
        In(Block, [128, 100, 12, 20]),
        In(Block, [176, 100, 12, 20]),
        In(Screw, [188, 108, 40, 7]),
        In(HandwheelSide, [228, 100, 18, 22]),
    ],
    spots: &[
        ("worm gearbox", &[(265, 53)]),
        ("blade-guide bearings", &[(100, 74), (202, 80)]),
        ("idler-wheel bearing", &[(51, 39)]),
        ("blade-tension screw and slide", &[(14, 39)]),
        ("arm pivot", &[(276, 108)]),
        ("vice screw", &[(208, 112)]),
    ],
};
