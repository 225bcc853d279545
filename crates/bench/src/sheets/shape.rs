//! Parts as simple solids: what `coverage` and `bath` ask of them alike.

use fields::Given;
use formulas::Recorder;
use formulas::solid_area::{Solid, Texture, surface_area, textured_area};
use reference::Fluid;
use units::{Area, Length, Mass, MassDensity};

use super::solid::material;
use super::{Asked, Unanswered};

/// What the part is like.
pub(super) const SHAPE: Given<&'static str> = Given::choice(
    "shape",
    &["block", "cylinder", "ball", "tube", "plate"],
    "block",
    "common-practice",
    "solid the part comes nearest to; a plate is sheet of any outline, known by its mass",
);
/// Length of a block, cylinder or tube.
pub(super) const LENGTH: Given<Length> = Given::quantity("length", "100 mm", "common-practice", "length of a block, cylinder or tube");
/// Width of a block.
pub(super) const WIDTH: Given<Length> = Given::quantity("width", "60 mm", "common-practice", "width of a block");
/// Height of a block.
pub(super) const HEIGHT: Given<Length> = Given::quantity("height", "40 mm", "common-practice", "height of a block");
/// Diameter of a cylinder, ball or tube.
pub(super) const DIAMETER: Given<Length> =
    Given::quantity("diameter", "50 mm", "common-practice", "diameter of a cylinder or ball, outside diameter of a tube");
/// Bore of a tube.
pub(super) const BORE: Given<Length> = Given::quantity("bore", "20 mm", "common-practice", "bore of a tube, which is wetted too");
/// Thickness of a plate.
pub(super) const THICKNESS: Given<Length> = Given::quantity("thickness", "3 mm", "common-practice", "thickness of a plate");
/// Mass of a part.
pub(super) const MASS: Given<Option<Mass>> = Given::maybe("mass", "mass of one part; a plate needs it");
/// Edges of a plate.
pub(super) const EDGE: Given<Option<Length>> = Given::maybe("edge", "length of all edges of a plate, holes included");
/// What it is made of.
pub(super) const METAL: Given<Vec<String>> = Given::materials("material", "mild-steel", "common-practice", "what it is made of");
/// What its faces are like.
pub(super) const TEXTURE: Given<&'static str> =
    Given::choice("texture", &["smooth", "knurled", "threaded"], "smooth", "common-practice", "what its faces are like");
/// How many of them.
pub(super) const PIECES: Given<f64> = Given::number("pieces", "1", "common-practice", "how many such parts");

/// Density of the part.
pub(super) fn density(asked: &Asked<'_>) -> Result<MassDensity, Unanswered> {
    let metal = material(asked, &METAL)?;
    metal
        .density
        .ok_or_else(|| Unanswered::Contradiction(format!("the density of {} is not known here: name another material", metal.name)))
}

/// The part as a solid.
pub(super) fn solid(asked: &Asked<'_>) -> Result<Solid, Unanswered> {
    let answers = asked.answers;
    Ok(match answers.word(&SHAPE) {
        "cylinder" => Solid::Cylinder { diameter: answers.quantity(&DIAMETER), length: answers.quantity(&LENGTH) },
        "ball" => Solid::Sphere { diameter: answers.quantity(&DIAMETER) },
        "tube" => Solid::Tube { outside: answers.quantity(&DIAMETER), bore: answers.quantity(&BORE), length: answers.quantity(&LENGTH) },
        "plate" => Solid::Plate {
            mass: answers
                .maybe(&MASS)
                .ok_or_else(|| Unanswered::Contradiction("a plate is known by what it weighs: give `mass`".to_owned()))?,
            density: density(asked)?,
            thickness: answers.quantity(&THICKNESS),
            edge: answers.maybe(&EDGE).unwrap_or_default(),
        },
        _ => Solid::Block { length: answers.quantity(&LENGTH), width: answers.quantity(&WIDTH), height: answers.quantity(&HEIGHT) },
    })
}

/// Area of all the parts.
pub(super) fn area<R: Recorder>(asked: &Asked<'_>, r: &mut R) -> Result<Area, Unanswered> {
    let texture = match asked.answers.word(&TEXTURE) {
        "knurled" => Texture::Knurled,
        "threaded" => Texture::Threaded,
        _ => Texture::Smooth,
    };
    let smooth = surface_area(r, &solid(asked)?)?;
    let one = if texture == Texture::Smooth { smooth } else { textured_area(r, smooth, texture) };
    Ok(one * pieces(asked)?)
}

/// How many parts there are, which is a whole number.
pub(super) fn pieces(asked: &Asked<'_>) -> Result<f64, Unanswered> {
    /// More than anybody dips or wipes at a time.
    const MOST: f64 = 100_000.0;
    let pieces = asked.answers.number(&PIECES);
    if pieces.fract() != 0.0 || pieces > MOST {
        return Err(Unanswered::Contradiction(format!("`pieces` is {pieces}: it is a whole number up to {MOST}")));
    }
    Ok(pieces)
}

/// What a fluid attacks among the materials of a field, by name.
pub(super) fn attacked(asked: &Asked<'_>, fluid: &Fluid, materials: &Given<Vec<String>>) -> Option<String> {
    let hurts = |material: &&String| fluid.chemistry.attacks.iter().any(|group| asked.reference.is_a(material, group));
    asked.answers.words(materials).iter().find(hurts).map(|material| asked.reference.name_of(material))
}
