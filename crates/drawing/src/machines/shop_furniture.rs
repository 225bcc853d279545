use crate::shape::Shape::{Block, Drawer, Ring, Rounded, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "shop furniture",
    seen: "from the front: a hoist on its beam, a drawer cabinet on wheels and a door",
    size: (310, 190),
    parts: &[
        // The hoist.
        In(Block, [4, 4, 112, 10]),
        Line(&[(40, 14), (40, 24)]),
        In(Rounded, [26, 24, 28, 24]),
        In(Ring, [33, 28, 14, 14]),
        In(Ring, [37, 48, 6, 11]),
        In(Ring, [37, 58, 6, 11]),
        In(Ring, [37, 68, 6, 11]),
        In(Ring, [37, 78, 6, 11]),
        In(Ring, [37, 88, 6, 11]),
        In(Ring, [37, 98, 6, 11]),
        Line(&[(40, 109), (40, 116), (48, 122), (44, 132), (34, 130), (32, 124)]),
        // The cabinet.
        In(Block, [84, 60, 96, 104]),
        In(Drawer, [92, 68, 80, 20]),
        In(Drawer, [92, 91, 80, 20]),
        In(Drawer, [92, 114, 80, 20]),
        In(Drawer, [92, 137, 80, 20]),
        In(Wheel, [106, 164, 22, 22]),
        In(Wheel, [138, 164, 22, 22]),
        // The door.
        In(Block, [212, 8, 94, 178]),
        In(Block, [220, 16, 78, 170]),
        Outline(&[(232, 30), (286, 30), (286, 84), (232, 84)]),
        In(Rounded, [230, 100, 10, 24]),
        Line(&[(235, 108), (250, 108)]),
        In(Block, [294, 30, 8, 22]),
        In(Block, [294, 142, 8, 22]),
    ],
    spots: &[
        ("drawer slides", &[(94, 147)]),
        ("door and cabinet locks", &[(235, 117), (132, 72)]),
        ("door hinges", &[(298, 41), (298, 153)]),
        ("hoist chain", &[(40, 84)]),
        ("trolley wheel nipples", &[(117, 175), (149, 175)]),
    ],
};
