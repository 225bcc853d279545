use super::lathe::{BED, CARRIAGE, CHANGE_GEARS, CHUCK, TAILSTOCK};
use crate::shape::Shape::{Bearing, Block, Headstock, Ribbed};
use crate::sketch::Part::{Group, Hidden, In};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "bench lathe",
    seen: "from the front, with the guard of the change gears open",
    size: (320, 148),
    parts: &[
        In(Block, [4, 136, 312, 10]),
        In(Block, [46, 112, 42, 24]),
        In(Block, [246, 112, 42, 24]),
        Group(BED, (34, 88)),
        In(Headstock, [50, 18, 64, 70]),
        Hidden(&[(50, 49), (114, 49)]),
        Hidden(&[(50, 59), (114, 59)]),
        In(Bearing, [53, 42, 10, 24]),
        In(Bearing, [101, 42, 10, 24]),
        In(Ribbed, [69, 40, 9, 28]),
        In(Ribbed, [83, 36, 9, 36]),
        Group(CHANGE_GEARS, (50, 88)),
        Group(CHUCK, (120, 88)),
        Group(TAILSTOCK, (254, 88)),
        Group(CARRIAGE, (162, 88)),
    ],
    spots: &[
        ("bed ways", &[(242, 89)]),
        ("cross slide", &[(177, 74)]),
        ("compound slide", &[(190, 63)]),
        ("leadscrew", &[(140, 105)]),
        ("half nuts", &[(203, 106)]),
        ("cross-slide screw", &[(207, 73)]),
        ("compound screw", &[(220, 63)]),
        ("apron rack and pinion", &[(172, 98)]),
        ("carriage handwheel shaft", &[(183, 114)]),
        ("headstock spindle bearings", &[(58, 54), (106, 54)]),
        ("headstock speed-change gears", &[(87, 43)]),
        ("change gears", &[(28, 112)]),
        ("change-gear studs", &[(41, 77)]),
        ("leadscrew end bearings", &[(42, 105), (288, 105)]),
        ("cross-slide screw bearing", &[(206, 84)]),
        ("tailstock quill", &[(247, 54)]),
        ("tailstock screw", &[(302, 54)]),
        ("dead centre", &[(234, 54)]),
        ("three-jaw chuck", &[(130, 38)]),
    ],
};
