//! What burns: flash point of liquids, contents of spray cans; and what of a substance alone goes over to a mixture that is nearly all it.

use formulas::flammability::{Burning, flammable_category, flash_point};
use formulas::vapour::{ATMOSPHERE_KPA, BesideWater, Component, blend};
use formulas::{FormulaError, Silent};
use reference::hazard::HazardClass as H;
use units::{Pressure, Temperature};
use uom::si::pressure::kilopascal;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::{Decided, Sieve};
use crate::air::{antoine, component};
use crate::label::{Consistency, Part, Rules};

const GASES: &[H] = &[H::FlamGas1A, H::FlamGas1B, H::FlamGas2];
const LIQUIDS: &[H] = &[H::FlamLiq1, H::FlamLiq2, H::FlamLiq3, H::FlamLiq4];
/// A spray can with no more than this that burns is not flammable; UN GHS chapter 2.3; in percent.
const SPRAY_BURNS: f64 = 1.0;
/// A flash point that was worked and not measured must clear a limit by this; UN GHS 2.6.4.2.
const MARGIN_K: f64 = 5.0;
/// From this share on a mixture counts as the substance alone; *common practice*, no rule says a number.
const ALONE: f64 = 0.95;
const WATER_G_PER_MOL: f64 = 18.015;
/// What flashes hotter than this by itself gives next to no vapour where any category ends.
const HEAVY_CELSIUS: f64 = 120.0;

impl Sieve<'_, '_> {
    pub(super) fn flames(&mut self) {
        match self.mixture.consistency {
            Consistency::SprayCan => self.spray_can(),
            Consistency::Liquid => self.liquid(),
            Consistency::Solid => {}
        }
        self.carried();
    }

    fn spray_can(&mut self) {
        let burns: Vec<H> = GASES.iter().chain(LIQUIDS).copied().chain([H::FlamSol1, H::FlamSol2]).collect();
        let sum = self.sum(&burns);
        // Only a test of the spray could lower the category.
        let class = if sum.percent > SPRAY_BURNS + 1e-9 { H::Aerosol1 } else { H::Aerosol3 };
        let (what, value) = (format!("spray can with {} that burns:", sum.names()), sum.percent);
        self.find(super::own(class), what, Some(Decided { value, cut_off: SPRAY_BURNS, unit: "%" }));
    }

    fn liquid(&mut self) {
        let boiling = self.mixture.boiling.or_else(|| self.lowest(|part| part.substance.boiling.map(|boiling| boiling.value)));
        let (flash, what) = match self.mixture.flash {
            Some(flash) => (flash, "flash point"),
            None => match self.worked_flash() {
                Some(found) => found,
                None => return,
            },
        };
        let (class, cut_off) = match flammable_category(flash, boiling) {
            Some(1) => (H::FlamLiq1, 23.0),
            Some(2) => (H::FlamLiq2, 23.0),
            Some(3) => (H::FlamLiq3, 60.0),
            Some(4) if self.rules != Rules::Clp => (H::FlamLiq4, 93.0),
            _ => return,
        };
        let decided = Decided { value: flash.get::<degree_celsius>(), cut_off, unit: "°C" };
        self.find(super::own(class), what, Some(decided));
    }

    /// The flash point to classify by where none was measured: that of the blend less a margin, but no lower than that of the part that
    /// flashes first; its own, where the blend cannot be worked.
    fn worked_flash(&self) -> Option<(Temperature, &'static str)> {
        let first = self.lowest(|part| part.substance.flash.map(|flash| flash.value).filter(|_| part.percent() > 0.0))?;
        if self.mixture.parts.iter().any(|part| part.substance.flash.is_some() && part.share.likely >= ALONE) {
            return Some((first, "flash point of what it nearly all is"));
        }
        let Some(blend) = self.blend() else { return Some((first, "flash point of the part that flashes first")) };
        match flash_point(&mut Silent, &blend, Pressure::new::<kilopascal>(ATMOSPHERE_KPA)) {
            Ok(flash) => {
                let celsius = (flash.get::<degree_celsius>() - MARGIN_K).max(first.get::<degree_celsius>());
                Some((Temperature::new::<degree_celsius>(celsius), "flash point worked from the vapours, less 5 K"))
            }
            // So thin that it never burns.
            Err(FormulaError::NoRoot { .. }) => None,
            Err(_) => Some((first, "flash point of the part that flashes first")),
        }
    }

    /// What burns at its high share among the rest at its low one; none where a vapour or limit is not known.
    fn blend(&self) -> Option<Vec<Burning>> {
        let parts = &self.mixture.parts;
        let burns = |part: &Part<'_>| part.substance.flash.is_some_and(|flash| flash.value.get::<degree_celsius>() < HEAVY_CELSIUS);
        let share = |part: &Part<'_>| if burns(part) { part.share.high } else { part.share.low };
        let mut components: Vec<Component> = parts.iter().map(|part| component(part.substance, share(part), 20.0)).collect();
        components.push(Component {
            mass_share: (1.0 - parts.iter().map(share).sum::<f64>()).max(0.0),
            molar_mass_g: WATER_G_PER_MOL,
            pressure: Pressure::default(),
            beside_water: BesideWater::Water,
        });
        let over = blend(&components).ok()?;
        let burning = parts.iter().zip(over).filter(|(part, _)| burns(part)).map(|(part, over)| {
            let substance = part.substance;
            substance.molar_mass_g_per_mol?;
            let lower_limit = substance.lower_flammable?.value * 100.0;
            Some(Burning { activity: over.activity, antoine: antoine(substance)?, lower_limit })
        });
        burning.collect()
    }

    fn lowest(&self, of: impl Fn(&Part<'_>) -> Option<Temperature>) -> Option<Temperature> {
        self.mixture.parts.iter().filter_map(of).min_by(|a, b| a.value.total_cmp(&b.value))
    }

    /// Classes that only a test of the mixture could give, taken from a substance it nearly all is.
    fn carried(&mut self) {
        let tested = |class: H| class < H::AcuteTox1Oral && !GASES.contains(&class) && !LIQUIDS.contains(&class) && class != H::PressGas;
        for part in self.mixture.parts.iter().filter(|part| part.share.high >= ALONE) {
            for hazard in part.substance.hazards.iter().filter(|hazard| tested(hazard.class)) {
                self.find(hazard.clone(), format!("it is nearly all {}", part.substance.name), None);
            }
        }
    }
}
