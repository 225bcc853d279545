use crate::shape::Shape::{Block, Gear, HandwheelBelow, Ring, Screw, Wheel};
use crate::sketch::Part::{Hidden, In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "shaper",
    seen: "from the side, with the drive in the column laid open",
    size: (310, 216),
    parts: &[
        In(Block, [60, 200, 230, 14]),
        Outline(&[(130, 200), (130, 66), (270, 66), (280, 200)]),
        // The ram.
        Outline(&[(74, 66), (74, 40), (92, 34), (296, 34), (304, 46), (304, 66)]),
        Line(&[(130, 60), (270, 60)]),
        // The tool slide and the clapper box.
        Outline(&[(74, 34), (74, 86), (58, 86), (58, 34)]),
        In(Screw, [62, 22, 7, 44]),
        In(HandwheelBelow, [54, 22, 24, -18]),
        Outline(&[(58, 72), (58, 98), (46, 98), (46, 72)]),
        In(Block, [49, 92, 6, 30]),
        // The table on the cross rail.
        In(Block, [118, 96, 12, 100]),
        In(Block, [100, 122, 18, 42]),
        Outline(&[(40, 132), (100, 132), (100, 176), (62, 176), (40, 160)]),
        Line(&[(50, 132), (50, 138), (58, 138), (58, 132)]),
        Line(&[(72, 132), (72, 138), (80, 138), (80, 132)]),
        In(Screw, [106, 164, 8, 36]),
        In(Ring, [103, 136, 12, 12]),
        // The bull gear, the link and the sliding block.
        In(Gear, [162, 92, 84, 84]),
        In(Gear, [240, 146, 28, 28]),
        In(Wheel, [274, 120, 36, 36]),
        Hidden(&[(204, 192), (180, 60)]),
        Hidden(&[(212, 192), (188, 60)]),
        In(Block, [186, 104, 14, 14]),
        In(Ring, [202, 186, 12, 12]),
        In(Ring, [178, 48, 12, 12]),
    ],
    spots: &[
        ("ram ways", &[(256, 62)]),
        ("cross-rail ways", &[(112, 128)]),
        ("column ways", &[(124, 108)]),
        ("tool slide", &[(72, 76)]),
        ("tool-slide screw", &[(66, 44)]),
        ("cross-feed and elevating screws", &[(109, 142), (110, 184)]),
        ("sliding block and crank pin", &[(193, 111)]),
        ("link pivot", &[(208, 192), (184, 54)]),
        ("bull gear and pinion", &[(242, 148)]),
        ("drive-shaft bearings", &[(254, 160)]),
        ("clapper-box pin and feed pawl", &[(50, 78)]),
    ],
};
