//! Ending an acid bath with sodium bicarbonate: how much, how much gas, how slowly, in what vessel.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::pickle::neutralise;
use formulas::solution::solution_density;
use units::{Mass, Quantity, Ratio, Temperature, Volume};

use super::acids::{ACID, acid};
use super::common::{ZERO_C, choice, said};
use super::{Asked, Outcome, Unanswered};

const VOLUME: Given<Volume> = Given::quantity("volume", "1 L", "common-practice", "volume of the bath");
const STRENGTH: Given<Ratio> = Given::quantity(
    "strength",
    "10 %",
    "common-practice",
    "strength by mass it was made up with; a spent bath has less, which is on the safe side",
);
const PURE: Given<Option<Mass>> = Given::maybe("pure", "pure acid in the bath, in place of its strength");
const ROOM: Given<Temperature> = Given::quantity("room", "20 °C", "common-practice", "temperature of the bath and the air");

pub(super) static KIND: Kind = Kind {
    name: "neutralise",
    about: "how much bicarbonate ends an acid bath, and how much gas that makes",
    fields: &[ACID.field(), VOLUME.field(), STRENGTH.field(), PURE.field(), ROOM.field()],
};

/// The strongest acid that is ended with bicarbonate as it is; *common practice*.
const STRONGEST: f64 = 0.2;

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let (acid, name) = acid(asked);
    let (volume, room): (Volume, Temperature) = (answers.quantity(&VOLUME), answers.quantity(&ROOM));
    if !(ZERO_C..=ZERO_C + 40.0).contains(&room.base()) {
        return Err(Unanswered::Contradiction(
            "let the bath come to 0 to 40 °C first: a hot one foams over, a frozen one does not mix".to_owned(),
        ));
    }
    let pure = match answers.maybe(&PURE) {
        Some(pure) => pure,
        None => solution_density(r, acid, answers.quantity(&STRENGTH))? * volume * answers.quantity(&STRENGTH),
    };
    if answers.quantity(&STRENGTH).base() > STRONGEST {
        return Err(Unanswered::Contradiction(
            "an acid above 20 % boils and spits when it is neutralised: thin it first, acid into cold water, as the sheet `dilute` says"
                .to_owned(),
        ));
    }
    if pure.base() > 2.0 * 1000.0 * volume.base() {
        return Err(Unanswered::Contradiction(format!("`pure` is more acid than {} L can hold: check both", said(volume.base() * 1000.0))));
    }
    let end = neutralise(r, acid, pure, volume, room)?;
    let outcome = Outcome::default()
        .exact(format!("pure {name} in it"), pure)
        .exact("sodium bicarbonate", end.bicarbonate)
        .says("have half as much again beside you, for spills")
        .exact("carbon dioxide it gives off", end.gas)
        .number("additions of 10 g at most", "", end.additions)
        .exact("gas of each", end.gas_each)
        .says("wait until it has stopped foaming")
        .exact("vessel that it fills by a third", end.vessel);
    let outcome = match asked.reference.fluid("bicarbonate") {
        Some(soda) => outcome.choices([choice(soda, true, "mild, cheap, and too much of it does no harm")]),
        None => outcome,
    };
    Ok(outcome
        .way(
            "keep it, label it, take it to the hazardous waste site",
            true,
            "the copper, silver and zinc in it stay, however neutral it is",
        )
        .way("pour it away once it is neutral", false, "sewers allow milligrams of copper in a litre, and it holds grams")
        .way("end it with lye or ammonia", false, "that much heat at once makes it boil and spit")
        .caution("Never bleach near it: acid and bleach make chlorine.", "common-practice"))
}
