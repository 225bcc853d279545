//! What a fluid does to the air of the room, and what is beside the job where it is used.

use handling::air::{self, Use, Way, exposure};
use handling::bars::{Beside, bar};
use handling::fire::burns;
use reference::{Fluid, Form, Reference, Trait};
use units::{Area, Digits, Frequency, Quantity, System, Time, show, show_number};

use crate::demand::{Gives, Judged};
use crate::need::Dose;
use crate::verdict::Grade;

/// What a step spends into the air of a room.
#[derive(Debug, Clone)]
pub struct Spent {
    /// The air of the room.
    pub room: air::Room,
    /// How much of each form of fluid is taken at a time, of the mix where it is mixed.
    pub doses: Vec<(Form, Dose)>,
    /// How it meets the air: wiped over what the dose covers where nothing is said. What comes as a spray is sprayed whatever is said.
    pub way: Option<Way>,
}

/// Wiping a square metre takes so much, mL; *common practice*.
pub(crate) const WIPING_ML_PER_M2: f64 = 75.0;
/// Work takes ten minutes at least, and half an hour for a square metre, s; *common practice*.
const WORK_S: (f64, f64) = (600.0, 1800.0);
/// A bead or drop of what cures is so thick, m: only its face gives off vapour, for what is cured stays where it is; *common practice*.
const BEAD_M: f64 = 1e-3;
/// An open bath stands for an hour, s; *common practice*.
const BATH_S: f64 = 3600.0;
/// From half a limit on, a fluid only will do: where people are paid to work, measuring begins there; *from memory*.
const ACTION: f64 = 0.5;

impl Spent {
    /// The use of a fluid that this makes; none where it takes none of its form.
    #[must_use]
    pub fn used(&self, fluid: &Fluid) -> Option<Use> {
        let (_, dose) = self.doses.iter().find(|(form, _)| *form == fluid.form)?;
        let share = fluid.dilution.as_ref().map_or(1.0, |dilution| dilution.value.likely);
        let amount = dose.amount().in_volume(fluid.density.value).filter(|amount| amount.base() > 0.0)? * share;
        let face = Area::from_base(amount.base() * 1e6 / WIPING_ML_PER_M2);
        let has = |wanted: Trait| fluid.traits.contains(&wanted);
        let cures = fluid.bond.is_some() && !has(Trait::Solvent);
        let (way, seconds) = match self.way {
            _ if has(Trait::Aerosol) => (Way::Sprayed, WORK_S.0),
            _ if cures => (Way::Tray(Area::from_base(amount.base() / BEAD_M)), WORK_S.0),
            Some(bath @ Way::Tray(_)) => (bath, BATH_S),
            way => (way.unwrap_or(Way::Wiped(face)), WORK_S.0.max(WORK_S.1 * face.base())),
        };
        Some(Use { amount, way, lasts: Time::from_base(seconds) })
    }

    /// How a fluid does; none where nothing of it evaporates.
    pub(crate) fn judge(&self, fluid: &Fluid, reference: &Reference) -> Option<Judged> {
        let exposure = exposure(fluid, &self.used(fluid)?, &self.room, reference).ok()??;
        let grade = if self.room.flames && exposure.is_near_burning() {
            Grade::Harmful
        } else if exposure.of_limit > 1.0 {
            Grade::Wrong
        } else if exposure.of_limit >= ACTION {
            Grade::WillDo
        } else {
            Grade::Right
        };
        Some(Judged { grade, given: Gives::Air(exposure.of_limit) })
    }

    /// What one breathes of it and how far it is from burning, with the way out, in words.
    pub(crate) fn words(&self, fluid: &Fluid, reference: &Reference, units: System) -> Option<String> {
        let used = self.used(fluid)?;
        let exposure = exposure(fluid, &used, &self.room, reference).ok()??;
        Some(format!("{} of it: {}", show(used.amount, units), exposure.words(units)))
    }

    /// What is asked, in words.
    pub(crate) fn asked(&self, units: System) -> String {
        let changes = show_number(self.room.changes.base() * 3600.0, Digits::Significant(2));
        let flames = if self.room.flames { ", and far from burning beside a flame" } else { "" };
        format!("fit to breathe in {} with an air change of {changes} /h to count on{flames}", show(self.room.volume, units))
    }
}

/// The air of a shop's room, at its unsafe ends.
#[must_use]
pub fn room_air(room: &shop::Room) -> air::Room {
    /// No room is tighter than this, 1/h; *common practice*.
    const TIGHT: f64 = 0.1;
    air::Room {
        volume: room.volume,
        changes: Frequency::from_base(room.least_air_changes.base().max(TIGHT / 3600.0)),
        temperature: room.hottest,
        flames: room.flames,
        attached_to_house: room.attached_to_house,
    }
}

/// How a fluid does beside a job.
pub(crate) fn beside(fluid: &Fluid, beside: Beside, reference: &Reference) -> Judged {
    let judged = |grade, words: &'static str| Judged { grade, given: Gives::Text(words.into()) };
    if let Some(bar) = bar(fluid, beside) {
        judged(Grade::Harmful, bar.what)
    } else if beside.hot_part && burns(fluid, reference).is_some_and(|burns| burns.category.is_some()) {
        judged(Grade::Harmful, "its vapour catches fire on a hot part")
    } else if beside.coating && fluid.traits.contains(&Trait::Silicone) {
        judged(Grade::Wrong, "silicone: neither paint nor glue holds on it")
    } else {
        judged(Grade::Right, "nothing speaks against it")
    }
}

/// What is beside the job, in words.
pub(crate) fn beside_words(beside: Beside) -> String {
    let facts = [
        (beside.heat, "heat or a flame, now or later"),
        (beside.hot_part, "a hot part"),
        (beside.oxygen, "oxygen"),
        (beside.light_metal, "light metal or zinc"),
        (beside.hard_steel, "hard or spring steel"),
        (beside.coating, "paint or glue after it"),
    ];
    let there: Vec<&str> = facts.iter().filter(|(holds, _)| *holds).map(|(_, words)| *words).collect();
    if there.is_empty() { "nothing that is never to be used".to_owned() } else { format!("harmless beside {}", there.join(", ")) }
}
