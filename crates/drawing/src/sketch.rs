//! What a machine looks like, as data.

use crate::pen::Pen;
use crate::shape::{Frame, Shape};

/// A place in a sketch: to the right and down from its upper left corner. A picture on a phone shows a step about as wide as a pixel.
pub(crate) type Place = (i16, i16);

/// The sketch of one kind of machine.
pub(crate) struct Sketch {
    /// Name of the template it stands for.
    pub template: &'static str,
    /// From where it is seen, such as `from the front`.
    pub seen: &'static str,
    /// Width and height; the parts keep inside.
    pub size: Place,
    /// From the hindmost to the foremost: a part hides what it lies on.
    pub parts: &'static [Part],
    /// Where each point of the template is. One that there is more than once may have several; each gets its number.
    pub spots: &'static [(&'static str, &'static [Place])],
}

impl Sketch {
    /// The spots of a point of this name.
    pub(crate) fn spots_of(&self, point: &str) -> impl Iterator<Item = (f64, f64)> {
        let spots = self.spots.iter().find(|(name, _)| *name == point).map_or(&[][..], |(_, spots)| spots);
        spots.iter().map(|spot| shifted(*spot, (0.0, 0.0)))
    }
}

/// One part of a sketch.
pub(crate) enum Part {
    /// A shape in its box: left, top, width, height. A width or height below zero mirrors it.
    In(Shape, [i16; 4]),
    /// A line from place to place.
    Line(&'static [Place]),
    /// An outline of its own.
    Outline(&'static [Place]),
    /// A line that lies behind something.
    Hidden(&'static [Place]),
    /// Parts that several machines share, moved by so much.
    Group(&'static [Self], Place),
}

impl Part {
    /// Draws it, moved by `by`.
    pub(crate) fn draw(&self, pen: &mut Pen, by: (f64, f64)) {
        let moved = |places: &[Place]| -> Vec<_> { places.iter().map(|place| shifted(*place, by)).collect() };
        match self {
            Self::In(shape, [x, y, width, height]) => {
                let (x, y) = shifted((*x, *y), by);
                shape.draw(pen, Frame { x, y, width: (*width).into(), height: (*height).into() });
            }
            Self::Line(places) => pen.line(&moved(places)),
            Self::Outline(places) => pen.outline(&moved(places)),
            Self::Hidden(places) => pen.hidden(&moved(places)),
            Self::Group(parts, further) => parts.iter().for_each(|part| part.draw(pen, shifted(*further, by))),
        }
    }
}

/// A place, moved.
pub(crate) fn shifted(place: Place, by: (f64, f64)) -> (f64, f64) {
    (f64::from(place.0) + by.0, f64::from(place.1) + by.1)
}
