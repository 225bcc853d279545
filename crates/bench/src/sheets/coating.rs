//! A coat on a fit or a thread: what it adds, how much of the tolerance that takes, and what drains off an oiled face.

use fields::{Given, Kind};
use formulas::coating::{Face, drained_mean, size_change, tolerance_use};
use formulas::slideway::drained_film;
use formulas::{FormulaError, Notebook, Recorder, Silent};
use reference::practice::Finish;
use units::{KinematicViscosity, Length, Quantity, Range, Temperature, Time};

use super::common::{Judged, Oil, choose, film, fluid, said};
use super::{Asked, Outcome, Unanswered};

const FACE: Given<&'static str> = Given::choice(
    "face",
    &["shaft", "bore", "screw", "nut"],
    "shaft",
    "common-practice",
    "what is coated: a shaft, a bore, or the 60° thread of a screw or a nut",
);
const FINISH: Given<&'static str> = Given::choice(
    "finish",
    &[
        "cold-blackening",
        "rust-oil",
        "preservative-oil",
        "water-displacing-film",
        "soft-wax",
        "hard-wax",
        "paste-wax",
        "hot-blackening",
        "phosphate-concentrate",
        "paint",
        "drying-oil",
    ],
    "cold-blackening",
    "common-practice",
    "the coat; those that are bought in count too",
);
const THICKNESS: Given<Option<Length>> = Given::maybe("thickness", "thickness of the coat, where you know it");
const TOLERANCE: Given<Length> =
    Given::quantity("tolerance", "0.021 mm", "iso-286-1", "tolerance of the diameter, such as 21 µm for H7 at 25 mm");
const OIL: Given<Vec<String>> = Given::fluids("fluid", "oil that is wiped on, by key; rust-preventive oil if none is named");
const VISCOSITY: Given<Option<KinematicViscosity>> =
    Given::maybe("viscosity", "viscosity of the oil at that temperature, in place of its key");
const TEMPERATURE: Given<Temperature> =
    Given::quantity("temperature", "20 °C", "common-practice", "temperature where the oiled part stands");
const UPRIGHT: Given<Length> = Given::quantity("upright", "0.3 m", "common-practice", "height of the oiled face");
const AFTER: Given<Time> = Given::quantity("after", "1 day", "common-practice", "how long the oil has drained");

pub(super) static KIND: Kind = Kind {
    name: "coating",
    about: "what a coat does to a fit or a thread, and how much oil stays on an upright face",
    fields: &[
        FACE.field(),
        FINISH.field(),
        THICKNESS.field(),
        TOLERANCE.field(),
        OIL.field(),
        VISCOSITY.field(),
        TEMPERATURE.field(),
        UPRIGHT.field(),
        AFTER.field(),
    ],
};

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let finish = asked
        .reference
        .finishes
        .get(answers.word(&FINISH))
        .ok_or_else(|| Unanswered::Contradiction(format!("no thickness of `{}` is known: give `thickness`", answers.word(&FINISH))))?;
    let thickness = answers.maybe(&THICKNESS).map_or(finish.thickness, Range::exact);
    let (face, tolerance) = (face(answers.word(&FACE)), answers.quantity(&TOLERANCE));
    if tolerance.base() > WIDEST_M {
        return Err(Unanswered::Contradiction("`tolerance` is wider than 10 mm: no coat matters there; was µm meant?".to_owned()));
    }
    let coat = Coat::on(r, face, thickness, is_grown(finish))?;
    // Both ends are worked silently, so that the page shows each formula once.
    let uses = |change: Length| tolerance_use(&mut Silent, change, tolerance);
    let worst = tolerance_use(r, coat.worst, tolerance)?;
    let shares = [uses(coat.change.low)?.share, uses(coat.change.likely)?.share, uses(coat.change.high)?.share];
    let likely = shares[1];
    let (low, high) = if shares[0] <= shares[2] { (shares[0], shares[2]) } else { (shares[2], shares[0]) };
    let name = asked.reference.name_of(&finish.class);
    let outcome = Outcome::default()
        .range("thickness of the coat", thickness)
        .size(coat_words(face), coat.change)
        .says(if is_grown(finish) { "the lesser where half of the coat replaces metal" } else { "laid on the metal" })
        .range("share of the tolerance", Range { low, likely, high })
        .says(if worst.too_much { "more than the fifth that a coat may take" } else { "a fifth at most" })
        .way(format!("coating it with {name}"), !worst.too_much, lesser_or_mask(worst.too_much))
        .choices(thinner(asked, face, tolerance));
    let outcome = drained(asked, outcome, r)?;
    Ok(outcome
        .caution(
            "Measure a coated piece before you coat the rest: thickness scatters with your hand, the bath and the shape.",
            "common-practice",
        )
        .caution("Never coat ways, bearings or measuring faces with more than oil; mask them.", "common-practice")
        .caution_if(
            !finish.home,
            "This coat is no work for a home shop: have it done, and tell the shop your tolerance.",
            "common-practice",
        ))
}

/// About the coarsest tolerance of ISO 286-1: grade 18 at 500 mm; *from memory*.
const WIDEST_M: f64 = 10e-3;

fn face(word: &str) -> Face {
    match word {
        "bore" => Face::Bore,
        "screw" => Face::ExternalThread,
        "nut" => Face::InternalThread,
        _ => Face::Shaft,
    }
}

const fn coat_words(face: Face) -> &'static str {
    match face {
        Face::Shaft | Face::Bore => "the diameter changes by",
        Face::ExternalThread | Face::InternalThread => "the pitch diameter changes by",
    }
}

const fn lesser_or_mask(too_much: bool) -> &'static str {
    if too_much { "mask the face, take a thinner coat, or cut the part so much smaller" } else { "the fit has room for it" }
}

/// Whether a coat grows out of the metal.
fn is_grown(finish: &Finish) -> bool {
    matches!(finish.class.as_str(), "cold-blackening" | "blackening-wipe" | "hot-blackening" | "phosphate-concentrate")
}

/// What a coat does to a diameter.
struct Coat {
    change: Range<Length>,
    /// The most it may add or take.
    worst: Length,
}

impl Coat {
    /// From the thinnest coat, half of which may replace metal where it is grown, to the thickest laid on.
    fn on<R: Recorder>(r: &mut R, face: Face, thickness: Range<Length>, grown: bool) -> Result<Self, FormulaError> {
        let thin = size_change(&mut Silent, face, thickness.low)?;
        let likely = size_change(&mut Silent, face, thickness.likely)?;
        let thick = size_change(r, face, thickness.high)?;
        let low = if grown { thin.grown } else { thin.laid_on };
        let ends = Range { low, likely: likely.laid_on, high: thick.laid_on };
        Ok(Self { change: ends.map(|size| size), worst: thick.laid_on })
    }
}

/// Finishes for a home shop that leave the fit alone, the thinnest first.
fn thinner(asked: &Asked<'_>, face: Face, tolerance: Length) -> Vec<crate::page::ChoiceRow> {
    choose(asked.reference, |fluid| {
        let finish = asked.reference.finishes.get(fluid.classes.first()?).filter(|finish| finish.home)?;
        let coat = Coat::on(&mut Silent, face, finish.thickness, is_grown(finish)).ok()?;
        let used = tolerance_use(&mut Silent, coat.worst, tolerance).ok()?;
        let percent = used.share.base() * 100.0;
        let why = format!("{} to {}, up to {} % of the tolerance", film(finish.thickness.low), film(finish.thickness.high), said(percent));
        // A sheet that only gives off vapour coats nothing.
        (finish.thickness.high > Length::default()).then_some(Judged { fits: !used.too_much, off: percent, why })
    })
}

fn drained(asked: &Asked<'_>, outcome: Outcome, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let named = fluid(asked, &OIL)?;
    let nu = match (answers.maybe(&VISCOSITY), named) {
        (Some(_), Some(_)) => return Err(Unanswered::Contradiction("give `fluid` or `viscosity`, not both".to_owned())),
        (Some(nu), None) => nu,
        (None, named) => {
            let oil = named.or_else(|| asked.reference.fluid("rust-oil")).and_then(Oil::of);
            oil.ok_or_else(|| Unanswered::Contradiction("that is no oil, or no viscosity of it is known: give `viscosity`".to_owned()))?
                .viscosity(r, answers.quantity(&TEMPERATURE))?
        }
    };
    let (upright, after) = (answers.quantity(&UPRIGHT), answers.quantity(&AFTER));
    let edge = drained_film(r, nu, upright, after)?;
    let mean = drained_mean(r, nu, upright, after)?;
    Ok(outcome
        .exact("oil left at the lower edge", edge)
        .exact("oil left on the whole face", mean)
        .says(format!("{} mL/m², however much you put on", said(mean.base() * 1e6))))
}
