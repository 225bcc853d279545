//! The parts machines are sketched with. Each fills its box; a box of negative width or height mirrors it.

use crate::pen::{Pen, round};

/// The box of a part.
#[derive(Clone, Copy)]
pub(crate) struct Frame {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

impl Frame {
    /// The place that lies so far along and down, as shares of the box.
    fn at(&self, (along, down): (f64, f64)) -> (f64, f64) {
        (self.x + along * self.width, self.y + down * self.height)
    }

    fn places(&self, shares: &[(f64, f64)]) -> Vec<(f64, f64)> {
        shares.iter().map(|share| self.at(*share)).collect()
    }

    fn is_lying(&self) -> bool {
        self.width.abs() >= self.height.abs()
    }

    /// The place that lies so far along the longer side and across it.
    fn lengthwise(&self, along: f64, across: f64) -> (f64, f64) {
        self.at(if self.is_lying() { (along, across) } else { (across, along) })
    }

    /// Shares of the longer side, about so far apart, without its ends.
    fn steps(&self, apart: f64) -> impl Iterator<Item = f64> {
        let count =
            (2..u8::MAX).take_while(|count| f64::from(*count) * apart <= self.width.abs().max(self.height.abs())).last().unwrap_or(2);
        (1..count).map(move |step| f64::from(step) / f64::from(count))
    }
}

/// A part.
#[derive(Clone, Copy)]
pub(crate) enum Shape {
    /// A plain box: a column, a slide, a bed, a foot.
    Block,
    /// A box with round corners: a guard, a housing.
    Rounded,
    /// A cylinder lying or standing, its ends round: a tank.
    Tank,
    /// A ring, seen face-on: a bore, a rim.
    Ring,
    /// A ring with its hub: a pulley, a wheel.
    Wheel,
    /// A handwheel seen face-on, with its crank handle.
    Handwheel,
    /// A handwheel seen from the side, its handle to the right.
    HandwheelSide,
    /// The same, its handle downward.
    HandwheelBelow,
    /// A gear seen face-on.
    Gear,
    /// A gear or a ribbed thing seen from the side: lines along its shorter side.
    Ribbed,
    /// A rolling bearing, cut: a box with a cross.
    Bearing,
    /// A screw, lying or standing.
    Screw,
    /// A rack; its teeth look down, or right where it stands.
    Rack,
    /// Way covers folded like bellows.
    Bellows,
    /// A motor, lying or standing.
    Motor,
    /// A mill's or a grinder's table with its slots.
    Table,
    /// A chuck of a lathe, its jaws to the right.
    Chuck,
    /// A chuck of a drill, pointing down.
    DrillChuck,
    /// A machine vise, its screw to the right.
    Vise,
    /// The headstock of a lathe.
    Headstock,
    /// The tailstock of a lathe, its quill to the left.
    Tailstock,
    /// The carriage of a lathe: saddle and apron.
    Carriage,
    /// A top slide with its tool post, its handle to the right.
    TopSlide,
    /// A stand on splayed legs.
    Stand,
    /// A lever from the lower left to a ball at the upper right.
    Lever,
    /// A drawer front with its pull.
    Drawer,
    /// A dial with its hand.
    Dial,
}

impl Shape {
    /// Draws the part into its box.
    pub(crate) fn draw(self, pen: &mut Pen, frame: Frame) {
        match self {
            Self::Block => pen.outline(&frame.places(&BOX)),
            Self::Rounded => rounded(pen, frame, 0.18),
            Self::Tank => rounded(pen, frame, 0.5),
            Self::Ring => ring(pen, frame, 1.0),
            Self::Wheel => wheel(pen, frame),
            Self::Handwheel => handwheel(pen, frame),
            Self::HandwheelSide => {
                pen.outline(&frame.places(&[(0.0, 0.3), (0.3, 0.3), (0.3, 0.7), (0.0, 0.7)]));
                rounded(pen, part(frame, 0.2, 0.0, 0.35, 1.0), 0.5);
                rounded(pen, part(frame, 0.55, 0.04, 0.45, 0.2), 0.4);
            }
            Self::HandwheelBelow => {
                pen.outline(&frame.places(&[(0.4, 0.0), (0.6, 0.0), (0.6, 0.3), (0.4, 0.3)]));
                rounded(pen, part(frame, 0.0, 0.2, 1.0, 0.35), 0.5);
                rounded(pen, part(frame, 0.04, 0.55, 0.2, 0.45), 0.4);
            }
            Self::Gear => gear(pen, frame),
            Self::Ribbed => {
                pen.outline(&frame.places(&BOX));
                for step in frame.steps(4.0) {
                    pen.thin(&[frame.lengthwise(step, 0.0), frame.lengthwise(step, 1.0)]);
                }
            }
            Self::Bearing => {
                pen.outline(&frame.places(&BOX));
                pen.thin(&frame.places(&[(0.0, 0.0), (1.0, 1.0)]));
                pen.thin(&frame.places(&[(0.0, 1.0), (1.0, 0.0)]));
            }
            Self::Screw => screw(pen, frame),
            Self::Rack => rack(pen, frame),
            Self::Bellows => bellows(pen, frame),
            Self::Motor => motor(pen, frame),
            Self::Table => {
                pen.outline(&frame.places(&BOX));
                pen.thin(&frame.places(&[(0.0, 0.35), (1.0, 0.35)]));
                for slot in [0.12, 0.88] {
                    pen.thin(&frame.places(&[(slot, 0.35), (slot, 1.0)]));
                }
            }
            Self::Chuck => chuck(pen, frame),
            Self::DrillChuck => {
                pen.outline(&frame.places(&[(0.3, 0.0), (0.7, 0.0), (0.7, 0.15), (0.3, 0.15)]));
                pen.outline(&frame.places(&[(0.0, 0.15), (1.0, 0.15), (1.0, 0.6), (0.7, 1.0), (0.3, 1.0), (0.0, 0.6)]));
                pen.thin(&frame.places(&[(0.0, 0.6), (1.0, 0.6)]));
            }
            Self::Vise => vise(pen, frame),
            Self::Headstock => {
                pen.outline(&frame.places(&[(0.0, 1.0), (0.0, 0.16), (0.1, 0.0), (0.9, 0.0), (1.0, 0.16), (1.0, 1.0)]));
                pen.thin(&frame.places(&[(0.0, 0.16), (1.0, 0.16)]));
            }
            Self::Tailstock => {
                pen.outline(&frame.places(&[
                    (0.0, 0.0),
                    (1.0, 0.0),
                    (1.0, 0.48),
                    (0.82, 0.56),
                    (0.95, 1.0),
                    (0.05, 1.0),
                    (0.26, 0.56),
                    (0.0, 0.48),
                ]));
                pen.thin(&frame.places(&[(0.08, 0.86), (0.92, 0.86)]));
            }
            Self::Carriage => {
                pen.outline(&frame.places(&[(0.1, 0.2), (0.9, 0.2), (0.9, 1.0), (0.1, 1.0)]));
                pen.outline(&frame.places(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.24), (0.0, 0.24)]));
            }
            Self::TopSlide => {
                pen.outline(&frame.places(&[(0.0, 0.6), (0.86, 0.6), (0.86, 1.0), (0.0, 1.0)]));
                pen.outline(&frame.places(&[(0.14, 0.0), (0.5, 0.0), (0.5, 0.6), (0.14, 0.6)]));
                pen.outline(&frame.places(&[(-0.12, 0.14), (0.5, 0.14), (0.5, 0.3), (0.0, 0.3)]));
                pen.thin(&frame.places(&[(0.0, 0.8), (0.86, 0.8)]));
                pen.outline(&frame.places(&[(0.86, 0.7), (0.94, 0.7), (0.94, 0.9), (0.86, 0.9)]));
                rounded(pen, part(frame, 0.94, 0.5, 0.06, 0.6), 0.5);
            }
            Self::Stand => {
                pen.outline(&frame.places(&[
                    (0.12, 0.0),
                    (0.88, 0.0),
                    (1.0, 1.0),
                    (0.82, 1.0),
                    (0.74, 0.2),
                    (0.26, 0.2),
                    (0.18, 1.0),
                    (0.0, 1.0),
                ]));
            }
            Self::Lever => {
                pen.line(&frame.places(&[(0.0, 1.0), (1.0, 0.0)]));
                let (x, y) = frame.at((1.0, 0.0));
                pen.oval((x, y), (3.2, 3.2));
            }
            Self::Drawer => {
                pen.outline(&frame.places(&BOX));
                pen.line(&frame.places(&[(0.36, 0.4), (0.36, 0.58), (0.64, 0.58), (0.64, 0.4)]));
            }
            Self::Dial => {
                ring(pen, frame, 1.0);
                ring(pen, frame, 0.76);
                for tick in round((0.5, 0.5), (0.38, 0.38), 12) {
                    let inner = (0.5 + (tick.0 - 0.5) * 0.78, 0.5 + (tick.1 - 0.5) * 0.78);
                    pen.thin(&[frame.at(tick), frame.at(inner)]);
                }
                pen.line(&frame.places(&[(0.5, 0.5), (0.62, 0.26)]));
            }
        }
    }
}

const BOX: [(f64, f64); 4] = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];

/// A box within a box, in shares of it.
fn part(frame: Frame, x: f64, y: f64, width: f64, height: f64) -> Frame {
    let (left, top) = frame.at((x, y));
    Frame { x: left, y: top, width: width * frame.width, height: height * frame.height }
}

/// A box whose corners are round by this share of its shorter side.
fn rounded(pen: &mut Pen, frame: Frame, corner: f64) {
    let (right, bottom) = frame.at((1.0, 1.0));
    pen.rounded([frame.x, frame.y, right, bottom], corner * frame.width.abs().min(frame.height.abs()));
}

/// A ring round the middle, of this share of the box.
fn ring(pen: &mut Pen, frame: Frame, share: f64) {
    pen.oval(frame.at((0.5, 0.5)), (frame.width / 2.0 * share, frame.height / 2.0 * share));
}

fn wheel(pen: &mut Pen, frame: Frame) {
    ring(pen, frame, 1.0);
    ring(pen, frame, 0.82);
    ring(pen, frame, 0.22);
}

fn handwheel(pen: &mut Pen, frame: Frame) {
    ring(pen, frame, 1.0);
    ring(pen, frame, 0.78);
    for (x, y) in [(0.5, 0.11), (0.16, 0.7), (0.84, 0.7)] {
        pen.thin(&[frame.at((0.5, 0.5)), frame.at((x, y))]);
    }
    ring(pen, frame, 0.26);
    ring(pen, part(frame, 0.74, 0.06, 0.2, 0.2), 1.0);
}

fn gear(pen: &mut Pen, frame: Frame) {
    let middle = frame.at((0.5, 0.5));
    // Two places on the tip of each tooth and two at its root, as large as the box allows.
    let teeth: u16 = if frame.width.abs() < 30.0 { 10 } else { 16 };
    let places: Vec<_> = (0_u8..4)
        .cycle()
        .zip(round((0.0, 0.0), (frame.width / 2.0, frame.height / 2.0), teeth * 4))
        .map(|(step, (x, y))| if step < 2 { (middle.0 + x, middle.1 + y) } else { (middle.0 + x * 0.82, middle.1 + y * 0.82) })
        .collect();
    pen.outline(&places);
    ring(pen, frame, 0.24);
}

fn screw(pen: &mut Pen, frame: Frame) {
    pen.outline(&frame.places(&BOX));
    let length = frame.width.abs().max(frame.height.abs());
    let lean = 1.2 / length;
    for step in frame.steps(3.6) {
        pen.thin(&[frame.lengthwise(step - lean, 1.0), frame.lengthwise(step + lean, 0.0)]);
    }
}

fn rack(pen: &mut Pen, frame: Frame) {
    let mut places = vec![frame.lengthwise(1.0, 0.0), frame.lengthwise(0.0, 0.0)];
    let mut tip = false;
    for step in std::iter::once(0.0).chain(frame.steps(3.0)).chain([1.0]) {
        places.push(frame.lengthwise(step, if tip { 1.0 } else { 0.45 }));
        tip = !tip;
    }
    pen.outline(&places);
}

fn bellows(pen: &mut Pen, frame: Frame) {
    pen.outline(&frame.places(&BOX));
    let mut out = false;
    let places: Vec<_> = std::iter::once(0.0)
        .chain(frame.steps(5.0))
        .chain([1.0])
        .map(|step| {
            out = !out;
            frame.lengthwise(step, if out { 0.1 } else { 0.9 })
        })
        .collect();
    pen.thin(&places);
}

fn motor(pen: &mut Pen, frame: Frame) {
    rounded(pen, frame, 0.16);
    for end in [0.16, 0.84] {
        pen.thin(&[frame.lengthwise(end, 0.0), frame.lengthwise(end, 1.0)]);
    }
    for rib in [0.25, 0.5, 0.75] {
        pen.thin(&[frame.lengthwise(0.24, rib), frame.lengthwise(0.76, rib)]);
    }
}

fn chuck(pen: &mut Pen, frame: Frame) {
    pen.outline(&frame.places(&[(0.0, 0.0), (0.6, 0.0), (0.6, 1.0), (0.0, 1.0)]));
    pen.thin(&frame.places(&[(0.2, 0.0), (0.2, 1.0)]));
    for (far, near) in [(0.06, 0.3), (0.94, 0.7)] {
        let middle = f64::midpoint(far, near);
        pen.outline(&frame.places(&[(0.6, far), (0.8, far), (0.8, middle), (1.0, middle), (1.0, near), (0.6, near)]));
    }
    pen.thin(&frame.places(&[(0.6, 0.42), (0.9, 0.42), (0.9, 0.58), (0.6, 0.58)]));
}

fn vise(pen: &mut Pen, frame: Frame) {
    pen.outline(&frame.places(&[(0.0, 0.7), (0.8, 0.7), (0.8, 1.0), (0.0, 1.0)]));
    pen.outline(&frame.places(&[(0.0, 0.0), (0.2, 0.0), (0.2, 0.7), (0.0, 0.7)]));
    pen.outline(&frame.places(&[(0.4, 0.0), (0.54, 0.0), (0.68, 0.5), (0.68, 0.7), (0.4, 0.7)]));
    pen.outline(&frame.places(&[(0.68, 0.46), (0.94, 0.46), (0.94, 0.62), (0.68, 0.62)]));
    pen.line(&frame.places(&[(0.97, 0.1), (0.97, 0.98)]));
}
