use crate::shape::Shape::{Block, Ring, Rounded, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "model steam engine",
    seen: "from the side, a horizontal engine",
    size: (310, 156),
    parts: &[
        In(Block, [6, 138, 298, 16]),
        // The cylinder, its valve chest above, on a foot.
        Outline(&[(34, 138), (40, 112), (96, 112), (102, 138)]),
        In(Block, [28, 62, 80, 50]),
        In(Block, [20, 58, 8, 58]),
        In(Block, [108, 58, 8, 58]),
        In(Rounded, [44, 36, 48, 26]),
        In(Block, [64, 24, 8, 12]),
        In(Rounded, [60, 10, 16, 14]),
        // The piston rod, the crosshead in its guide, the valve rod.
        In(Block, [116, 84, 30, 6]),
        In(Block, [132, 70, 54, 6]),
        In(Block, [132, 98, 54, 6]),
        In(Block, [142, 76, 20, 22]),
        In(Block, [92, 46, 50, 5]),
        Outline(&[(142, 43), (238, 74), (236, 80), (140, 54)]),
        In(Ring, [136, 43, 11, 11]),
        // The wheel, the crank and the connecting rod.
        In(Wheel, [196, 42, 92, 92]),
        Outline(&[(222, 138), (230, 84), (254, 84), (262, 138)]),
        In(Ring, [226, 72, 32, 32]),
        Outline(&[(154, 82), (216, 100), (214, 108), (152, 92)]),
        In(Ring, [208, 96, 17, 17]),
        In(Ring, [147, 82, 10, 10]),
        In(Ring, [236, 82, 12, 12]),
        Line(&[(217, 104), (242, 88)]),
    ],
    spots: &[
        ("cylinder", &[(52, 88)]),
        ("slide valve", &[(54, 50)]),
        ("crankshaft main bearings", &[(242, 88)]),
        ("big end", &[(216, 105)]),
        ("crosshead and little end", &[(152, 87)]),
        ("eccentric strap", &[(231, 76)]),
        ("valve-gear pins", &[(142, 48)]),
        ("piston rod and valve rod", &[(124, 87), (112, 48)]),
    ],
};
